/** Parts to section: lays the chain, takes off the back's corners, closes the ring and checks it. */
import {
  areaMm2,
  line,
  type Piece,
  type Point,
  point,
  type Ring,
  reversePiece,
  ring,
  ringFromVertices,
} from "../curve/index.ts";
import {
  cataloguedTrouble,
  fine,
  LEAST_PIECE_MM,
  type Outcome,
  refused,
  SAME_POINT_MM,
  sameMm,
  type TroubleCode,
} from "../measure/index.ts";
import { type BackCorner, backCorners } from "./back.ts";
import { inspectSection } from "./inspect.ts";
import type { PartSpec, SectionSpec, StickSpec } from "./part-spec.ts";
import { endOf, gaugeEdgePoint, type LaidPart, layParts } from "./parts.ts";
import { LARGEST_SECTION_MM } from "./sizes.ts";
import type { FreeSpan, NamedSpan, Section } from "./types.ts";

/**
 * Builds a section from its parts. The chain starts on the gauge edge at `startHeightMm` and has to end on the far
 * edge (or on the back); the ring is closed along far edge, back and gauge edge.
 * Refused: sizes out of range, a chain that misses the far edge, and all that `inspectSection` refuses.
 */
export function buildSection(spec: SectionSpec): Outcome<Section, TroubleCode> {
  const section = layOutSection(spec);
  if (!section.ok) return section;
  const { refusals, warnings } = inspectSection(section.value);
  const [first, ...more] = refusals;
  return first === undefined ? fine(section.value, warnings) : refused(first, ...more);
}

/**
 * The same without the inspection, which takes most of the time: for a picture while something is being pulled. The
 * outline may cross itself or stand out of the stick.
 */
export function layOutSection(spec: SectionSpec): Outcome<Section, TroubleCode> {
  const wrongStick = checkStick(spec.stick);
  if (wrongStick !== null) return wrongStick;
  const { widthMm, thicknessMm } = spec.stick;
  const startHeightMm = spec.startHeightMm ?? thicknessMm;
  if (!(startHeightMm >= 0 && startHeightMm <= thicknessMm + SAME_POINT_MM)) {
    return refused(
      cataloguedTrouble("section-start", "section.startHeightMm", { startHeightMm, thicknessMm }),
    );
  }
  if (spec.parts.length === 0) return refused(cataloguedTrouble("parts-none", "section.parts", {}));
  const start = gaugeEdgePoint(startHeightMm);
  const laid = layParts(spec.parts, start, widthMm, "section.parts");
  if (!laid.ok) return laid;
  const ended = endOnStick(laid.value, start, widthMm);
  if (!ended.ok) return ended;
  const back = backCorners(spec, startHeightMm, ended.value.end);
  if (!back.ok) return back;
  const section = assemble(spec, start, ended.value.laid, back.value);
  return section === null
    ? refused(cataloguedTrouble("section-encloses-nothing", "section.parts", {}))
    : fine(section);
}

function checkStick(stick: StickSpec): ReturnType<typeof refused<TroubleCode>> | null {
  for (const [side, valueMm] of [
    ["width", stick.widthMm],
    ["thickness", stick.thicknessMm],
  ] as const) {
    if (!(valueMm >= LEAST_PIECE_MM && valueMm <= LARGEST_SECTION_MM)) {
      return refused(
        cataloguedTrouble("stick-size", "section.stick", { side, valueMm, mostMm: LARGEST_SECTION_MM }),
      );
    }
  }
  return null;
}

interface EndedChain {
  readonly laid: readonly LaidPart[];
  readonly end: Point;
}

/** The chain's end set exactly on the far edge (or the back), where it lies within a point's width of it. */
function endOnStick(
  laid: readonly LaidPart[],
  start: Point,
  widthMm: number,
): Outcome<EndedChain, TroubleCode> {
  const end = endOf(laid, start);
  if (sameMm(end.x, widthMm)) return fine(withEnd(laid, point(widthMm, sameMm(end.y, 0) ? 0 : end.y)));
  if (sameMm(end.y, 0) && end.x > SAME_POINT_MM && end.x < widthMm)
    return fine(withEnd(laid, point(end.x, 0)));
  const facts = { endsMm: end.x, widthMm };
  return end.x < widthMm
    ? refused(cataloguedTrouble("parts-fall-short", "section.parts", { ...facts, leftMm: widthMm - end.x }))
    : refused(cataloguedTrouble("parts-too-wide", "section.parts", { ...facts, overMm: end.x - widthMm }));
}

function withEnd(laid: readonly LaidPart[], end: Point): EndedChain {
  const settled = laid.map((part, index) => {
    if (index + 1 < laid.length) return part;
    const pieces = part.pieces.map((piece, at) =>
      at + 1 < part.pieces.length ? piece : { ...piece, to: end },
    );
    return { ...part, pieces };
  });
  return { laid: settled, end };
}

/**
 * The ring in its order: back, far edge, the chain from far to gauge edge, gauge edge. It starts where the back meets
 * what was taken off at the gauge edge, so that parts are never cut in two by the ring's start.
 */
function assemble(
  spec: SectionSpec,
  start: Point,
  laid: readonly LaidPart[],
  back: { readonly gauge: BackCorner; readonly far: BackCorner },
): Section | null {
  const outline = new OutlineBuilder(back.gauge.onBack);
  outline.straightTo(back.far.onBack);
  outline.named(back.far.spec?.kind, back.far.spec?.name, back.far.pieces);
  const end = endOf(laid, start);
  outline.straightTo(end);
  for (const part of [...laid].reverse()) {
    const pieces = part.pieces.map((piece) => reversePiece(piece)).reverse();
    outline.named(part.spec.kind, part.spec.name, pieces, part.spec);
  }
  outline.straightTo(back.gauge.onEdge);
  outline.named(
    back.gauge.spec?.kind,
    back.gauge.spec?.name,
    back.gauge.pieces.map((piece) => reversePiece(piece)).reverse(),
  );
  const { widthMm, thicknessMm } = spec.stick;
  const done = outline.done();
  return done === null ? null : { name: spec.name, stick: stickRing(widthMm, thicknessMm), ...done };
}

/** The stick as a ring: back, far edge, face, gauge edge. */
export function stickRing(widthMm: number, thicknessMm: number): Ring {
  return ringFromVertices([
    [0, 0],
    [widthMm, 0],
    [widthMm, thicknessMm],
    [0, thicknessMm],
  ]);
}

class OutlineBuilder {
  private readonly pieces: Piece[] = [];
  private readonly spans: NamedSpan[] = [];
  private readonly free: FreeSpan[] = [];
  private at: Point;

  constructor(start: Point) {
    this.at = start;
  }

  straightTo(to: Point): void {
    if (sameMm(this.at.x, to.x) && sameMm(this.at.y, to.y)) return;
    this.pieces.push(line(this.at, to));
    this.at = to;
  }

  named(kind: string | undefined, name: string | undefined, pieces: readonly Piece[], part?: PartSpec): void {
    if (kind === undefined || pieces.length === 0) return;
    const span = { first: this.pieces.length, count: pieces.length };
    this.spans.push({ ...span, kind, name: name ?? kind });
    if (part?.kind === "free curve") this.free.push(span);
    this.pieces.push(...pieces);
    this.at = pieces.at(-1)?.to ?? this.at;
  }

  /** Null where the run goes the wrong way round: `ring` would turn it, and the spans would name other pieces. */
  done(): Pick<Section, "outline" | "named" | "freeSpans"> | null {
    if (!(areaMm2({ pieces: this.pieces }) > 0)) return null;
    return { outline: ring(this.pieces), named: this.spans, freeSpans: this.free };
  }
}
