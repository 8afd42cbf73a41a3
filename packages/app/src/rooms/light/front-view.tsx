/** One version from the front: the section as it hangs, and the strip as it will look beside it. */
import type { SectionInLight, Tone } from "mouldwright/light";
import { hangingWords, lampWords } from "mouldwright/sheets";
import { useEffect, useId, useRef } from "react";
import { useLengthWords } from "../../common/length-words.ts";
import { STATE_SAID, sharesOf } from "./compare.ts";
import { type FrontLayout, middleMm, namedBands, seenBands } from "./front-layout.ts";
import { SectionDrawing } from "./section-in-light.tsx";
import { paintStrip } from "./strip-paint.ts";

export interface FrontViewProps {
  readonly name: string;
  readonly layout: FrontLayout;
  readonly lit: SectionInLight;
  readonly tones: readonly Tone[];
  readonly hasLabels: boolean;
}

export function FrontView({ name, layout, lit, tones, hasLabels }: FrontViewProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useLengthWords();
  const titleId = useId();
  useEffect(() => {
    if (canvas.current === null) return;
    paintStrip(canvas.current, { layout, lit, tones, dotsRatio: Math.min(devicePixelRatio, 2) });
  }, [layout, lit, tones]);
  const said = sharesOf(lit)
    .map(({ state, showsMm }) => `${words.length(showsMm)} ${STATE_SAID[state]}`)
    .join(", ");
  const size = { width: layout.widthPx, height: layout.heightPx };
  return (
    <div className="front-view" style={size}>
      <canvas ref={canvas} className="front-strip" style={size} />
      <svg
        className="front-drawing"
        viewBox={`0 0 ${layout.widthPx} ${layout.heightPx}`}
        role="img"
        aria-labelledby={titleId}
        fill="none"
      >
        <title id={titleId}>
          {name}: {hangingWords(lit)}. {lampWords(lit)} From the front: {said}.
        </title>
        <SectionDrawing layout={layout} lit={lit} />
        <StripEdge layout={layout} lit={lit} />
        {hasLabels ? <BandNames layout={layout} lit={lit} /> : null}
      </svg>
    </div>
  );
}

interface PartProps {
  readonly layout: FrontLayout;
  readonly lit: SectionInLight;
}

function StripEdge({ layout, lit }: PartProps) {
  const { stripFromPx, stripToPx, run } = layout;
  const [fromX, fromY] = layout.at(0, 0);
  const [toX, toY] = layout.at(0, lit.widthMm);
  return run === "level" ? (
    <rect
      className="strip-edge"
      x={stripFromPx}
      y={fromY}
      width={stripToPx - stripFromPx}
      height={toY - fromY}
    />
  ) : (
    <rect
      className="strip-edge"
      x={fromX}
      y={stripFromPx}
      width={toX - fromX}
      height={stripToPx - stripFromPx}
    />
  );
}

const LINE_PX = 18;
const LEADER_PX = 8;

/** What each band of a level strip is, and how wide it shows. */
function BandNames({ layout, lit }: PartProps) {
  const words = useLengthWords();
  if (layout.run !== "level") return null;
  return namedBands(seenBands(lit), layout.pxPerMm, LINE_PX).map((band) => {
    const [, y] = layout.at(0, middleMm(band));
    const x = layout.stripToPx;
    return (
      <g key={`${band.startMm} ${band.state}`}>
        <path className="lit-leader" d={`M${x} ${y}h${LEADER_PX}`} />
        <text className="lit-label" x={x + LEADER_PX + 3} y={y + 4.5}>
          {band.state} {words.length(band.endMm - band.startMm).replace(/ (?:light|full)$/, "")}
        </text>
      </g>
    );
  });
}
