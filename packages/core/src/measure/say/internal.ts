/** The sentence for our own mistakes, at the outermost edge. */
import { catalogue } from "./catalogue.ts";

export const internalTroubles = catalogue({
  internal: {
    example: { detail: "radiusMm must be greater than zero" },
    sentence: (facts, write) => `The program made a mistake of its own: ${write.text(facts.detail)}.`,
    hint: () =>
      "Nothing of yours was changed. Keep the files you worked with and report them with this message, so that it can be put right.",
  },
});
