/** Files for other programs and machines: what each is for, in a sentence, and what it is called. */
export const OTHER_FILE_KINDS = ["dxf", "svg", "moulding", "sanding block", "depth gauge"] as const;
export type OtherFileKind = (typeof OTHER_FILE_KINDS)[number];

export interface OtherFile {
  readonly kind: OtherFileKind;
  readonly name: string;
  readonly says: string;
  readonly ending: string;
  readonly type: string;
  /** Whether it is drawn out to a length that the maker chooses. */
  readonly hasLength: boolean;
}

export const OTHER_FILES: readonly OtherFile[] = [
  {
    kind: "dxf",
    name: "Drawing (DXF)",
    says: "Stick, section, lines and every cut on layers of their own, in millimetres, for drawing and laser programs.",
    ending: ".dxf",
    type: "image/vnd.dxf",
    hasLength: false,
  },
  {
    kind: "svg",
    name: "Drawing (SVG)",
    says: "The same layers as a picture at full size, for any program that draws.",
    ending: ".svg",
    type: "image/svg+xml",
    hasLength: false,
  },
  {
    kind: "moulding",
    name: "Moulding (STL)",
    says: "A length of the finished moulding, to print as a sample.",
    ending: "-moulding.stl",
    type: "model/stl",
    hasLength: true,
  },
  {
    kind: "sanding block",
    name: "Sanding block (STL)",
    says: "A block that fits the face, half a millimetre left for the paper.",
    ending: "-sanding-block.stl",
    type: "model/stl",
    hasLength: true,
  },
  {
    kind: "depth gauge",
    name: "Depth gauge (STL)",
    says: "A bar with a tongue for each depth under the face: where the bar just bears, the depth is reached.",
    ending: "-depth-gauge.stl",
    type: "model/stl",
    hasLength: false,
  },
];

/** Solids are printed in one go: longer than this no printer takes, mm. */
export const SOLID_LENGTH_MM = { least: 5, usual: 100, most: 1000 } as const;
