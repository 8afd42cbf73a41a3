/** Sentences about printed sheets and files for other programs. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const sheetTroubles = catalogue({
  "sheet-correction-wrong": {
    example: { measuredMm: 88.4, leastMm: 90, mostMm: 110 },
    sentence: (facts, write) =>
      `A bar of 100 mm that measures ${write.length(facts.measuredMm)} was not printed at 100 %; ${write.length(facts.leastMm)} to ${write.length(facts.mostMm)} can be corrected.`,
    hint: () =>
      "Print again with scaling off (100 %, “actual size”, not “fit to page”), and measure 0 to 100 across, then up.",
  },
  "sheet-too-large": {
    example: { widthMm: 900, heightMm: 420, paper: "A4", sheets: 18, most: 12 },
    sentence: (facts, write) =>
      `At full size ${write.length(facts.widthMm)} × ${write.length(facts.heightMm)} would take ${facts.sheets} sheets of ${write.text(facts.paper)} pieced together; ${facts.most} are the most that stay true.`,
    hint: () => "Choose larger paper, or write the outline as SVG or DXF and have it plotted in one piece.",
  },
  "sheet-depths-missing": {
    example: { name: "Cavetto" },
    sentence: (facts, write) =>
      `The plan of ${write.text(facts.name)} has no depth measured from the face, so there is nothing for a depth gauge to measure.`,
    hint: () => "Leave the depth gauge out; its curves stop at their lines and ends.",
  },
});
