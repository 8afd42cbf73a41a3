/** One version, or two at one scale side by side, as large as the room allows. */
import type { SectionInLight, Tone } from "mouldwright/light";
import { useEffect, useRef, useState } from "react";
import { frontLayout } from "./front-layout.ts";
import { FrontView } from "./front-view.tsx";
import { StateMark } from "./state-mark.tsx";

export interface NamedVersion {
  readonly name: string;
  readonly lit: SectionInLight;
  readonly tones: readonly Tone[];
}

/** From this width on there is room to name the bands, px. */
const LABELS_FROM_PX = 520;
/** Two stand beside each other from this width on; narrower they stand one above the other, px. */
const BESIDE_FROM_PX = 620;
const GAP_PX = 24;

export function FrontViews({ versions }: { readonly versions: readonly NamedVersion[] }) {
  const frame = useRef<HTMLDivElement>(null);
  const { widthPx, mostHeightPx } = useRoomPx(frame);
  const isBeside = versions.length > 1 && widthPx >= BESIDE_FROM_PX;
  const eachPx = isBeside ? (widthPx - GAP_PX) / 2 : widthPx;
  const eachHeightPx = versions.length > 1 && !isBeside ? mostHeightPx / 2 : mostHeightPx;
  const hasLabels = eachPx >= LABELS_FROM_PX;
  const lits = versions.map(({ lit }) => lit);
  const layout =
    lits.length === 0 || eachPx <= 0
      ? null
      : frontLayout(lits, { widthPx: eachPx, mostHeightPx: eachHeightPx, hasLabels });
  return (
    <div ref={frame} className="front-views">
      {layout === null
        ? null
        : versions.map(({ name, lit, tones }) => (
            <figure key={name} className="front-figure">
              {versions.length > 1 ? <figcaption>{name}</figcaption> : null}
              <FrontView name={name} layout={layout} lit={lit} tones={tones} hasLabels={hasLabels} />
            </figure>
          ))}
      <ul className="light-key" aria-label="What the lines mean">
        <li>
          <StateMark state="shadow" /> in shadow
        </li>
        <li>
          <StateMark state="shade" /> turned from the light
        </li>
        <li>
          <StateMark state="ray" /> ray that ends a shadow
        </li>
      </ul>
    </div>
  );
}

/** Of the screen's height, so much at most for the picture: the lamp is to be seen beside it. */
const HEIGHT_RATIO = { narrow: 0.42, wide: 0.72 } as const;
const WIDE_PX = 768;

function useRoomPx(frame: React.RefObject<HTMLDivElement | null>) {
  const [room, setRoom] = useState({ widthPx: 0, mostHeightPx: 0 });
  useEffect(() => {
    if (frame.current === null) return;
    const element = frame.current;
    const measure = (): void => {
      const ratio = innerWidth < WIDE_PX ? HEIGHT_RATIO.narrow : HEIGHT_RATIO.wide;
      setRoom({ widthPx: Math.floor(element.clientWidth), mostHeightPx: Math.floor(innerHeight * ratio) });
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame]);
  return room;
}
