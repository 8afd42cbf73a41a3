/** The section as it hangs: wall, bands along shade and shadow, rays that end shadows, the way the light comes. */
import type { LightState, SectionInLight } from "mouldwright/light";
import { SAME_POINT_MM } from "mouldwright/measure";
import { type FrontLayout, type Place, pathOf, placed, WALL_PX } from "./front-layout.ts";

export interface SectionDrawingProps {
  readonly layout: FrontLayout;
  readonly lit: SectionInLight;
}

export function SectionDrawing({ layout, lit }: SectionDrawingProps) {
  const outline = `${pathOf(layout, lit, lit.outline)}Z`;
  return (
    <g className="lit-section">
      <Wall layout={layout} lit={lit} />
      {/* Drawn before the wood, which then covers the half of each band that would lie inside it. */}
      {lit.stretches.map((stretch) =>
        stretch.state === "light" ? null : (
          <path
            key={`${stretch.state} ${stretch.from.x} ${stretch.from.y} ${stretch.to.x} ${stretch.to.y}`}
            className={BAND_CLASS[stretch.state]}
            d={pathOf(layout, lit, stretch.pieces)}
          />
        ),
      )}
      <path className="lit-wood" d={outline} />
      <path className="lit-outline" d={outline} />
      {raysOf(layout, lit).map(([from, to]) => (
        <line
          key={`${from[0]} ${from[1]} ${to[0]} ${to[1]}`}
          className="lit-ray"
          x1={from[0]}
          y1={from[1]}
          x2={to[0]}
          y2={to[1]}
        />
      ))}
      <LightWay layout={layout} lit={lit} />
    </g>
  );
}

const BAND_CLASS: Readonly<Record<Exclude<LightState, "light">, string>> = {
  shade: "lit-shade",
  shadow: "lit-shadow",
};

const WALL_STROKE_PX = 9;

/** The wall's line with short strokes behind it. */
function Wall({ layout, lit }: SectionDrawingProps) {
  const isLevel = layout.run === "level";
  const [, top] = layout.at(0, 0);
  const [left] = layout.at(0, 0);
  const lengthPx = lit.widthMm * layout.pxPerMm + 2 * layout.wallPx;
  const start = (isLevel ? top : left) - layout.wallPx;
  const strokes = Array.from({ length: Math.floor(lengthPx / WALL_STROKE_PX) }, (_, index) => {
    const at = start + (index + 1) * WALL_STROKE_PX;
    return isLevel
      ? `M${WALL_PX} ${at - WALL_STROKE_PX}L${WALL_PX - 7} ${at}`
      : `M${at - WALL_STROKE_PX} ${WALL_PX}L${at} ${WALL_PX - 7}`;
  });
  const line = isLevel ? `M${WALL_PX} ${start}v${lengthPx}` : `M${start} ${WALL_PX}h${lengthPx}`;
  return (
    <>
      <path className="lit-wall-strokes" d={strokes.join("")} />
      <path className="lit-wall" d={line} />
    </>
  );
}

/** What ends a shadow, on the face and on so much of the wall as is shown. */
function raysOf(layout: FrontLayout, lit: SectionInLight): readonly (readonly [Place, Place])[] {
  const { beyondFirstMm, beyondLastMm, firstCaster, lastCaster } = lit.onWall;
  const isShown = (mm: number): boolean => mm > SAME_POINT_MM && mm * layout.pxPerMm <= layout.wallPx;
  const onWall = [
    ...(isShown(beyondFirstMm)
      ? [{ caster: firstCaster, end: { x: 0, y: lit.widthMm + beyondFirstMm } }]
      : []),
    ...(isShown(beyondLastMm) ? [{ caster: lastCaster, end: { x: 0, y: -beyondLastMm } }] : []),
  ];
  return [...lit.shadowEnds, ...onWall].map(({ caster, end }) => [
    placed(layout, lit, caster),
    placed(layout, lit, end),
  ]);
}

const ARROW_PX = 20;
const ARROWS_APART_PX = 9;

/** Three arrows that come in at the corner where the lamp stands, clear of the wood. */
function LightWay({ layout, lit }: SectionDrawingProps) {
  const { right, up, out } = lit.direction;
  const along = layout.run === "level" ? -up : right;
  const length = Math.hypot(out, along);
  const way: Place = layout.run === "level" ? [out / length, along / length] : [along / length, out / length];
  const [cornerX, cornerY] = layout.at(lit.projectionMm, along >= 0 ? 0 : lit.widthMm);
  return [-1, 0, 1].map((step) => {
    const tip: Place = [
      cornerX - way[0] * 8 - way[1] * step * ARROWS_APART_PX,
      cornerY - way[1] * 8 + way[0] * step * ARROWS_APART_PX,
    ];
    const foot: Place = [tip[0] - way[0] * ARROW_PX, tip[1] - way[1] * ARROW_PX];
    const barb = (side: 1 | -1): string =>
      `M${tip[0]} ${tip[1]}L${tip[0] - way[0] * 7 + way[1] * side * 3} ${tip[1] - way[1] * 7 - way[0] * side * 3}`;
    return (
      <path
        key={step}
        className="lit-way"
        d={`M${foot[0]} ${foot[1]}L${tip[0]} ${tip[1]}${barb(1)}${barb(-1)}`}
      />
    );
  });
}
