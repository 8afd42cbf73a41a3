/** Pages as PDF: the same bytes in Node and in a browser. Node's way to the fonts stands apart, in `node-fonts.ts`. */
export type { FontFiles } from "./fonts.ts";
export { type PdfWriting, writePdf } from "./write-pdf.ts";
