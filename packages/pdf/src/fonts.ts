/** The two fonts of a sheet, as their files' bytes: whoever calls reads or fetches them. */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}
