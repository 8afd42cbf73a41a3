import { describe, expect, it } from "vitest";
import { areaMm2, extentsOf, verticesOf } from "../curve/index.ts";
import { readDxfSection } from "./dxf-read.ts";
import type { Section } from "./types.ts";

type Group = readonly [number, string | number];

/** The text of a DXF from its groups; `unit` is $INSUNITS, null for none. */
function dxf(entities: readonly Group[], unit: number | null = 4, more: readonly Group[] = []): string {
  const header: Group[] =
    unit === null
      ? []
      : [
          [0, "SECTION"],
          [2, "HEADER"],
          [9, "$INSUNITS"],
          [70, unit],
          [0, "ENDSEC"],
        ];
  const groups: Group[] = [
    ...header,
    ...more,
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...entities,
    [0, "ENDSEC"],
    [0, "EOF"],
  ];
  return groups.map(([code, value]) => `${code}\n${value}\n`).join("");
}

function block(name: string, entities: readonly Group[], x = 0, y = 0): Group[] {
  return [[0, "BLOCK"], [2, name], [10, x], [20, y], ...entities, [0, "ENDBLK"]];
}

function blocks(...all: readonly Group[][]): Group[] {
  return [[0, "SECTION"], [2, "BLOCKS"], ...all.flat(), [0, "ENDSEC"]];
}

function line(x1: number, y1: number, x2: number, y2: number, layer = "0"): Group[] {
  return [
    [0, "LINE"],
    [8, layer],
    [10, x1],
    [20, y1],
    [30, 0],
    [11, x2],
    [21, y2],
    [31, 0],
  ];
}

function polyline(
  vertices: readonly (readonly [number, number, number?])[],
  layer = "0",
  flags = 1,
): Group[] {
  const corners = vertices.flatMap(([x, y, bulge]): Group[] => [
    [10, x],
    [20, y],
    ...(bulge === undefined ? [] : ([[42, bulge]] as Group[])),
  ]);
  return [[0, "LWPOLYLINE"], [8, layer], [90, vertices.length], [70, flags], ...corners];
}

/** 20 by 10, its upper right quarter gone: 150 mm². */
const STEP = [
  [0, 0],
  [20, 0],
  [20, 5],
  [10, 5],
  [10, 10],
  [0, 10],
] as const;

function read(text: string, warnings: readonly string[] = [], options = {}): Section {
  const outcome = readDxfSection(text, { name: "test", ...options });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  const codes = outcome.warnings.map(({ code }) => code).filter((code) => !code.startsWith("section-"));
  expect(codes).toEqual(warnings);
  return outcome.value;
}

function refusal(text: string) {
  const outcome = readDxfSection(text, { name: "test" });
  if (outcome.ok) throw new Error("was read");
  return outcome.trouble;
}

describe("units", () => {
  it.each<[string, number | null, number, string[]]>([
    ["inches", 1, 25.4, []],
    ["millimetres", 4, 1, []],
    ["centimetres", 5, 10, []],
    ["decimetres", 14, 100, []],
    ["feet", 2, 304.8, []],
    ["metres", 6, 1000, []],
    ["thousandths of an inch", 9, 0.0254, []],
    ["none: millimetres", 0, 1, ["size-without-unit"]],
    ["no header: millimetres", null, 1, ["size-without-unit"]],
  ])("%s", (_, unit, unitMm, warnings) => {
    // Drawn so that it comes out 20 mm wide whatever the unit.
    const scaled = STEP.map(([x, y]) => [x / unitMm, y / unitMm] as const);
    expect(areaMm2(read(dxf(polyline(scaled), unit), warnings).outline)).toBeCloseTo(150, 4);
  });

  it("feet and metres that make an absurd size are refused", () => {
    expect(refusal(dxf(polyline(STEP), 2)).code).toBe("section-too-large");
    expect(refusal(dxf(polyline(STEP), 6)).code).toBe("section-too-large");
  });

  it("miles are no unit of a moulding", () => {
    expect(refusal(dxf(polyline(STEP), 3))).toMatchObject({ code: "dxf-unit-unknown", facts: { unit: "3" } });
  });
});

describe("entities", () => {
  it("a light polyline's bulge is an arc, exactly", () => {
    const section = read(
      dxf(
        polyline([
          [0, 0],
          [42, 0],
          [42, 4],
          [28, 4, 1 - Math.SQRT2],
          [20, 12],
          [0, 12],
        ]),
      ),
    );
    const [x, y, bulge] = verticesOf(section.outline)[3]!;
    expect([x, y]).toEqual([28, 4]);
    expect(bulge).toBeCloseTo(1 - Math.SQRT2, 12);
  });

  it("a bulge past the half circle is two arcs", () => {
    // Three quarters of a circle of radius 5 standing on a block: bulge tan(270° / 4).
    const bulge = Math.tan((3 * Math.PI) / 8);
    const r = 5 * Math.SQRT1_2;
    const section = read(
      dxf(
        polyline([
          [0, 0],
          [20, 0],
          [20, 5],
          [10 + r, 5, bulge],
          [10 - r, 5],
          [0, 5],
        ]),
      ),
    );
    expect(areaMm2(section.outline)).toBeCloseTo(100 + (3 / 4) * 25 * Math.PI + r * r, 4);
  });

  it("an old polyline with its vertices, points of a spline's frame left out", () => {
    const vertex = (x: number, y: number, bulge = 0, flags = 0): Group[] => [
      ...([
        [0, "VERTEX"],
        [8, "0"],
        [10, x],
        [20, y],
        [42, bulge],
        [70, flags],
      ] as const),
    ];
    const entities: Group[] = [
      ...([
        [0, "POLYLINE"],
        [8, "0"],
        [66, 1],
        [70, 1],
      ] as const),
      ...vertex(0, 0),
      ...vertex(20, 0),
      ...vertex(500, 500, 0, 16),
      ...vertex(20, 5, 1),
      ...vertex(10, 5),
      ...vertex(0, 5),
      [0, "SEQEND"],
    ];
    expect(areaMm2(read(dxf(entities)).outline)).toBeCloseTo(100 + (Math.PI * 25) / 2, 9);
  });

  it("loose lines and an arc, in no order", () => {
    const arc: Group[] = [
      [0, "ARC"],
      [8, "0"],
      [10, 15],
      [20, 5],
      [40, 5],
      [50, 0],
      [51, 180],
    ];
    const entities = [
      ...line(0, 5, 10, 5),
      ...line(20, 0, 20, 5),
      ...arc,
      ...line(0, 0, 20, 0),
      ...line(0, 0, 0, 5),
    ];
    expect(areaMm2(read(dxf(entities)).outline)).toBeCloseTo(100 + (Math.PI * 25) / 2, 9);
  });

  it("an arc across the zero of the angles, and one seen from behind", () => {
    const half = [
      ...line(0, 0, 0, 5),
      ...line(0, 5, 10, 5),
      ...line(10, 5, 10, 20),
      ...line(10, 20, 30, 20),
      ...line(30, 20, 30, 16),
      ...line(30, 4, 30, 0),
      ...line(30, 0, 0, 0),
    ];
    const arc: Group[] = [
      [0, "ARC"],
      [8, "0"],
      [10, 30],
      [20, 10],
      [40, 6],
      [50, 270],
      [51, 90],
    ];
    const behind: Group[] = [
      [0, "ARC"],
      [8, "0"],
      [10, -30],
      [20, 10],
      [40, 6],
      [50, 90],
      [51, 270],
      [210, 0],
      [220, 0],
      [230, -1],
    ];
    const expected = 30 * 5 + 20 * 15 + 18 * Math.PI;
    expect(areaMm2(read(dxf([...half, ...arc])).outline)).toBeCloseTo(expected, 6);
    expect(areaMm2(read(dxf([...half, ...behind])).outline)).toBeCloseTo(expected, 6);
  });

  it("a circle alone on the section's layer, in a stick", () => {
    const circle: Group[] = [
      [0, "CIRCLE"],
      [8, "SECTION"],
      [10, 10],
      [20, 10],
      [40, 6],
    ];
    const stick = polyline(
      [
        [0, 0],
        [20, 0],
        [20, 20],
        [0, 20],
      ],
      "Stick",
    );
    const section = read(dxf([...circle, ...stick]));
    expect(areaMm2(section.outline)).toBeCloseTo(36 * Math.PI, 9);
    expect(extentsOf(section.stick)).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 20 });
  });

  it("an ellipse seen from behind turns the other way", () => {
    // The quarter from the longer axis (right) to the shorter: up when seen from the front, down from behind.
    const quarter = (z: number, y: number): Group[] => [
      ...([
        [0, "ELLIPSE"],
        [8, "0"],
        [10, 10],
        [20, y],
        [11, 8],
        [21, 0],
        [40, 0.5],
        [41, 0],
        [42, Math.PI / 2],
      ] as const),
      [230, z],
    ];
    const area = 10 * 10 + 8 * 5;
    const front = [
      ...quarter(1, 5),
      ...line(18, 5, 18, 0),
      ...line(18, 0, 0, 0),
      ...line(0, 0, 0, 9),
      ...line(0, 9, 10, 9),
    ];
    expect(areaMm2(read(dxf(front)).outline)).toBeCloseTo(10 * 9 + 8 * 5 + 8 * Math.PI, 2);
    const behind = [
      ...quarter(-1, 9),
      ...line(10, 5, 0, 5),
      ...line(0, 5, 0, 12),
      ...line(0, 12, 18, 12),
      ...line(18, 12, 18, 9),
    ];
    expect(areaMm2(read(dxf(behind)).outline)).toBeCloseTo(10 * 7 + 8 * 3 + 8 * Math.PI, 2);
    expect(area).toBe(140);
  });

  it("a rational spline: the quarter circle of three points is within 0.0001 mm of the circle", () => {
    // The standard rational quadratic: weights 1, √½, 1. Source: Piegl and Tiller, The NURBS Book, section 7.3.
    const spline: Group[] = [
      ...([
        [0, "SPLINE"],
        [8, "0"],
        [70, 12],
        [71, 2],
        [72, 6],
        [73, 3],
      ] as const),
      ...[0, 0, 0, 1, 1, 1].map((knot): Group => [40, knot]),
      ...[1, Math.SQRT1_2, 1].map((weight): Group => [41, weight]),
      ...([
        [10, 20],
        [20, 5],
        [10, 20],
        [20, 15],
        [10, 10],
        [20, 15],
      ] as const),
    ];
    const section = read(
      dxf([
        ...spline,
        ...line(10, 15, 0, 15),
        ...line(0, 15, 0, 0),
        ...line(0, 0, 20, 0),
        ...line(20, 0, 20, 5),
      ]),
    );
    const [span] = section.freeSpans;
    const { pieces } = section.outline;
    for (let i = span!.first; i < span!.first + span!.count; i++) {
      const { from, to } = pieces[i]!;
      const middle = Math.hypot((from.x + to.x) / 2 - 10, (from.y + to.y) / 2 - 5);
      expect(Math.abs(Math.hypot(from.x - 10, from.y - 5) - 10)).toBeLessThan(2e-6);
      expect(10 - middle).toBeLessThan(1e-4);
    }
  });

  it("a periodic spline whose ends are not clamped: its true ends, not its first control point", () => {
    // Uniform quadratic B-spline of three points: it begins at the middle of the first leg and ends at that of the last.
    const spline: Group[] = [
      ...([
        [0, "SPLINE"],
        [8, "0"],
        [71, 2],
      ] as const),
      ...[0, 1, 2, 3, 4, 5].map((knot): Group => [40, knot]),
      ...([
        [10, 20],
        [20, 0],
        [10, 20],
        [20, 10],
        [10, 10],
        [20, 10],
      ] as const),
    ];
    const section = read(
      dxf([
        ...spline,
        ...line(15, 10, 0, 10),
        ...line(0, 10, 0, 0),
        ...line(0, 0, 20, 0),
        ...line(20, 0, 20, 5),
      ]),
    );
    // A parabola with its corner at (20, 10): two thirds of the triangle cut off the rectangle's corner lie inside.
    expect(areaMm2(section.outline)).toBeCloseTo(200 - (5 * 5) / 2 / 3, 3);
  });

  it.each<[string, Group[], string]>([
    [
      "a spline without its knots",
      [
        [0, "SPLINE"],
        [71, 3],
        [10, 0],
        [20, 0],
      ],
      "dxf-entity-broken",
    ],
    [
      "a spline with falling knots",
      [
        [0, "SPLINE"],
        [71, 1],
        [40, 0],
        [40, 2],
        [40, 1],
        [40, 3],
        [10, 0],
        [20, 0],
        [10, 1],
        [20, 1],
      ],
      "dxf-entity-broken",
    ],
    [
      "a spline of degree 9999",
      [
        [0, "SPLINE"],
        [71, 9999],
      ],
      "dxf-entity-broken",
    ],
    [
      "a line without an end",
      [
        [0, "LINE"],
        [10, 0],
        [20, 0],
      ],
      "dxf-entity-broken",
    ],
    [
      "a circle of radius minus one",
      [
        [0, "CIRCLE"],
        [10, 0],
        [20, 0],
        [40, -1],
      ],
      "dxf-entity-broken",
    ],
    [
      "a coordinate that is no number",
      [
        [0, "LINE"],
        [10, "wide"],
        [20, 0],
        [11, 1],
        [21, 1],
      ],
      "dxf-entity-broken",
    ],
    [
      "an infinite one",
      [
        [0, "LINE"],
        [10, "1e999"],
        [20, 0],
        [11, 1],
        [21, 1],
      ],
      "dxf-entity-broken",
    ],
    ["an enormous one", line(0, 0, 1e308, 1), "drawing-number-absurd"],
    [
      "an enormous outline",
      polyline([
        [0, 0],
        [1e300, 0],
        [1e300, 1e300],
      ]),
      "drawing-number-absurd",
    ],
    [
      "an arc standing up",
      [
        [0, "ARC"],
        [10, 0],
        [20, 0],
        [40, 1],
        [50, 0],
        [51, 90],
        [210, 1],
        [220, 0],
        [230, 0],
      ],
      "dxf-out-of-plane",
    ],
    [
      "an insert of nothing known",
      [
        [0, "INSERT"],
        [2, "OVOLO"],
      ],
      "dxf-block-missing",
    ],
    ["nothing", [], "outline-missing"],
    [
      "only a text",
      [
        [0, "TEXT"],
        [1, "cornice"],
      ],
      "outline-missing",
    ],
  ])("refused: %s", (_, entities, code) => {
    expect(refusal(dxf(entities)).code).toBe(code);
  });
});

describe("blocks", () => {
  it("nested, moved by their base, scaled and turned", () => {
    const inner = block("INNER", polyline(STEP), 5, 5);
    const outer = block("OUTER", [
      [0, "INSERT"],
      [2, "inner"],
      [10, 1],
      [20, 2],
      [41, 2],
      [42, 2],
      [50, 90],
    ]);
    const section = read(
      dxf(
        [
          [0, "INSERT"],
          [2, "OUTER"],
        ],
        4,
        blocks(inner, outer),
      ),
    );
    expect(extentsOf(section.outline)).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 40 });
    expect(areaMm2(section.outline)).toBeCloseTo(600, 9);
  });

  it("things on layer 0 of a block stand on the layer of its insert", () => {
    const step = block("STEP", [
      ...polyline(STEP),
      ...polyline(
        [
          [50, 50],
          [60, 50],
          [60, 60],
        ],
        "NOTES",
      ),
    ]);
    const insert: Group[] = [
      [0, "INSERT"],
      [8, "SECTION"],
      [2, "STEP"],
    ];
    expect(areaMm2(read(dxf(insert, 4, blocks(step))).outline)).toBe(150);
  });

  it("stretched one way, an arc is a free curve", () => {
    const body = block(
      "BODY",
      polyline([
        [0, 0],
        [20, 0],
        [20, 5, 1],
        [10, 5],
        [0, 5],
      ]),
    );
    const insert: Group[] = [
      [0, "INSERT"],
      [2, "BODY"],
      [41, 2],
    ];
    const section = read(dxf(insert, 4, blocks(body)));
    expect(section.freeSpans).toHaveLength(1);
    expect(areaMm2(section.outline)).toBeCloseTo(2 * (100 + (Math.PI * 25) / 2), 2);
  });

  it("a block within itself is refused, at once", () => {
    const self = block("SELF", [
      [0, "INSERT"],
      [2, "SELF"],
      [0, "INSERT"],
      [2, "SELF"],
    ]);
    expect(
      refusal(
        dxf(
          [
            [0, "INSERT"],
            [2, "SELF"],
          ],
          4,
          blocks(self),
        ),
      ).code,
    ).toBe("drawing-too-deep");
  });

  it("blocks of blocks by the billion are refused, at once", () => {
    const names = ["A", "B", "C", "D", "E", "F", "G", "H", "I", "J"];
    const all = names.map((name, i) => {
      const next = names[i + 1];
      const inserts =
        next === undefined
          ? []
          : Array.from({ length: 10 }, (): Group[] => [
              [0, "INSERT"],
              [2, next],
            ]);
      return block(name, inserts.flat());
    });
    expect(
      refusal(
        dxf(
          [
            [0, "INSERT"],
            [2, "A"],
          ],
          4,
          blocks(...all),
        ),
      ).code,
    ).toBe("drawing-too-many-points");
    const array: Group[] = [
      [0, "INSERT"],
      [2, "J"],
      [70, 1e9],
      [71, 1e9],
    ];
    expect(refusal(dxf(array, 4, blocks(...all))).code).toBe("drawing-too-many-points");
  });
});

describe("which outline is the section", () => {
  const other = polyline([
    [50, 0],
    [60, 0],
    [60, 10],
  ]);

  it("layer SECTION, in any case; or the only closed outline", () => {
    expect(areaMm2(read(dxf([...other, ...polyline(STEP, "Section")])).outline)).toBe(150);
    expect(areaMm2(read(dxf([...line(50, 0, 60, 0), ...polyline(STEP)])).outline)).toBe(150);
  });

  it("what is frozen, switched off, invisible or on paper is not drawn", () => {
    const layer = (name: string, flags: number, colour: number): Group[] => [
      [0, "LAYER"],
      [2, name],
      [70, flags],
      [62, colour],
    ];
    const tables: Group[] = [
      [0, "SECTION"],
      [2, "TABLES"],
      [0, "TABLE"],
      [2, "LAYER"],
      ...layer("COLD", 1, 7),
      ...layer("DARK", 0, -7),
      [0, "ENDTAB"],
      [0, "ENDSEC"],
    ];
    const hidden = [
      ...polyline(
        [
          [50, 0],
          [60, 0],
          [60, 10],
        ],
        "COLD",
      ),
      ...polyline(
        [
          [50, 0],
          [60, 0],
          [60, 10],
        ],
        "Dark",
      ),
      ...([
        [0, "CIRCLE"],
        [60, 1],
        [10, 0],
        [20, 0],
        [40, 3],
      ] as const),
      ...([
        [0, "CIRCLE"],
        [67, 1],
        [10, 0],
        [20, 0],
        [40, 3],
      ] as const),
    ];
    expect(areaMm2(read(dxf([...hidden, ...polyline(STEP)], 4, tables)).outline)).toBe(150);
  });

  it("numbers that the maker knows the size of, whatever the header says", () => {
    const outcome = readDxfSection(dxf(polyline(STEP)), { name: "test", numberMm: 2 });
    const plain = readDxfSection(dxf(polyline(STEP)), { name: "test", numberMm: 1 });
    if (!outcome.ok || !plain.ok) throw new Error("was refused");
    expect(outcome.warnings.map(({ code }) => code)).not.toContain("size-without-unit");
    expect(areaMm2(outcome.value.outline)).toBeCloseTo(4 * areaMm2(plain.value.outline), 9);
  });

  it("a rectangle around the outline, down to its back, is its stick, and that is said", () => {
    const plain = readDxfSection(dxf(polyline(STEP)), { name: "test", numberMm: 1 });
    if (!plain.ok) throw new Error("was refused");
    const xs = STEP.map(([x]) => x ?? 0);
    const ys = STEP.map(([, y]) => y ?? 0);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const [low, high] = [Math.min(...ys), Math.max(...ys)];
    const around = polyline([
      [left, low],
      [right + 5, low],
      [right + 5, high + 3],
      [left, high + 3],
    ]);
    const outcome = readDxfSection(dxf([...around, ...polyline(STEP)]), { name: "test", numberMm: 1 });
    if (!outcome.ok) throw new Error(outcome.trouble.code);
    expect(outcome.warnings.map(({ code }) => code)).toContain("drawn-stick-assumed");
    expect(areaMm2(outcome.value.outline)).toBeCloseTo(areaMm2(plain.value.outline), 9);
    expect(extentsOf(outcome.value.stick)).toMatchObject({ maxX: right - left + 5, maxY: high - low + 3 });
  });

  it("hatching, text and open lines on the layer are left out, and that is said", () => {
    const beside: Group[] = [
      [0, "HATCH"],
      [8, "SECTION"],
      [0, "TEXT"],
      [8, "SECTION"],
      ...line(0, 30, 9, 30, "SECTION"),
    ];
    const outcome = readDxfSection(dxf([...beside, ...polyline(STEP, "SECTION")]), { name: "test" });
    expect(outcome.ok && outcome.warnings[0]).toMatchObject({
      code: "dxf-entities-left-out",
      facts: { kinds: ["HATCH", "TEXT", "open lines"], count: 3 },
    });
  });

  it.each<[string, Group[], string]>([
    ["two closed outlines", [...other, ...polyline(STEP)], "outline-several"],
    ["an open one", polyline(STEP, "SECTION", 0), "outline-open"],
    [
      "three lines from one point",
      [...line(0, 0, 9, 0), ...line(0, 0, 0, 9), ...line(0, 0, 9, 9)],
      "outline-branches",
    ],
    [
      "a line drawn twice",
      [...line(0, 0, 9, 0), ...line(0, 0, 9, 0), ...line(9, 0, 9, 9), ...line(9, 9, 0, 0)],
      "outline-branches",
    ],
    [
      "two sticks",
      [...polyline(STEP), ...polyline(STEP, "STICK"), ...polyline(STEP, "STICK")],
      "drawn-stick-several",
    ],
    ["an open stick", [...polyline(STEP), ...line(0, 0, 9, 0, "STICK")], "drawn-stick-broken"],
    [
      "crossing itself",
      polyline([
        [0, 0],
        [30, 10],
        [30, 0],
        [0, 12],
      ]),
      "section-crosses-itself",
    ],
  ])("refused: %s", (_, entities, code) => {
    expect(refusal(dxf(entities)).code).toBe(code);
  });

  it("ends within 0.01 mm are joined and that is said; 0.02 mm is a gap", () => {
    const near = (gap: number) => [
      ...line(0, 0, 20, 0),
      ...line(20, gap, 20, 5),
      ...line(20, 5, 0, 9),
      ...line(0, 9, 0, 0),
    ];
    // The corner that is moved lies on the back of the stick too.
    read(dxf(near(0.008)), ["noise-ends", "noise-sides"]);
    const trouble = refusal(dxf(near(0.02)));
    expect(trouble.code).toBe("outline-open");
    expect(trouble.facts.gapMm).toBeCloseTo(0.02, 9);
  });
});

describe("files that are no whole DXF", () => {
  it.each([
    ["binary", "AutoCAD Binary DXF\r\n\u001a\u0000", "dxf-binary"],
    ["empty", " \n ", "drawing-empty"],
    ["cut short", dxf(polyline(STEP)).slice(0, -60), "dxf-cut-short"],
    ["a code that is none", "0\nSECTION\nfourteen\nHEADER\n", "dxf-broken"],
    ["no sections", "0\nEOF\n", "dxf-broken"],
    ["prose", "a drawing of a cornice\nby hand\n", "dxf-broken"],
  ])("%s", (_, text, code) => {
    expect(refusal(text).code).toBe(code);
  });

  it("ends of lines of all kinds, comments and spaces before codes", () => {
    const text = `999\nby hand\n${dxf(polyline(STEP))}`
      .replace(/\n/g, "\r\n")
      .replace(/^(\d+)\r/gm, "  $1\r");
    expect(areaMm2(read(text).outline)).toBe(150);
  });
});
