/** Reads a stranger's drawing away from the screen: a large one takes a moment, a broken one must not hold it up. */
import { readSectionFile } from "mouldwright/section";
import type { FromReader, ToReader } from "./reader-messages.ts";

addEventListener("message", ({ data }: MessageEvent<ToReader>) => {
  const section = readSectionFile(data);
  const answer: FromReader = section.ok
    ? { kind: "section", section: section.value, warnings: section.warnings }
    : { kind: "refused", troubles: [section.trouble, ...(section.more ?? [])] };
  postMessage(answer);
});
