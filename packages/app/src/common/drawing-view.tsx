/**
 * A drawing of the core on the screen. The same lines and lettering as on paper; the colours come from the theme, so that
 * one drawing serves light and dark. Everything shown is built from plain data: no text is ever taken as markup.
 */
import type { Colour } from "mouldwright/sheets";
import {
  DASHES_MM,
  type Drawing,
  type Item,
  LINE_WIDTH_MM,
  type PaperPoint,
  type Path,
  type Window,
} from "mouldwright/sheets";
import { memo, type ReactNode, useId } from "react";

export interface DrawingViewProps {
  readonly drawing: Drawing;
  /** Only this part of the sheet, mm; all of it if left out. */
  readonly window?: Window;
  readonly className?: string;
  /** Read out instead of the drawing's own title. */
  readonly label?: string;
}

export const DrawingView = memo(function DrawingView({
  drawing,
  window,
  className,
  label,
}: DrawingViewProps) {
  const titleId = useId();
  const view = window ?? { minX: 0, minY: 0, maxX: drawing.widthMm, maxY: drawing.heightMm };
  return (
    <svg
      className={className === undefined ? "drawing" : `drawing ${className}`}
      viewBox={`${view.minX} ${view.minY} ${view.maxX - view.minX} ${view.maxY - view.minY}`}
      role="img"
      aria-labelledby={titleId}
      fill="none"
      strokeLinejoin="round"
    >
      <title id={titleId}>{label ?? drawing.title}</title>
      {drawing.description === "" ? null : <desc>{drawing.description}</desc>}
      <DrawingItems items={drawing.items} />
    </svg>
  );
});

/** The items alone, to stand inside a picture of the screen's own. */
export function DrawingItems({ items }: { readonly items: readonly Item[] }): ReactNode {
  // A drawing is never reordered in place: its items' places are their names.
  return items.map((item, index) => itemElement(item, index));
}

function itemElement(item: Item, key: number): ReactNode {
  switch (item.kind) {
    case "stroke":
      return (
        <path
          key={key}
          d={pathData(item.path)}
          strokeWidth={LINE_WIDTH_MM[item.weight]}
          strokeDasharray={DASHES_MM[item.line].length === 0 ? undefined : DASHES_MM[item.line].join(" ")}
          style={{ stroke: inkOf(item.colour) }}
        />
      );
    case "fill":
      return (
        <path
          key={key}
          d={item.paths.map(pathData).join(" ")}
          fillRule="evenodd"
          style={{ fill: inkOf(item.colour) }}
        />
      );
    case "text":
      return (
        <text
          key={key}
          x={item.at[0]}
          y={item.at[1]}
          fontSize={item.sizeMm}
          textAnchor={item.anchor}
          fontWeight={item.bold ? 700 : undefined}
          transform={item.turnDeg === 0 ? undefined : `rotate(${-item.turnDeg} ${pair(item.at)})`}
          style={{ fill: inkOf(item.colour) }}
        >
          {item.text}
        </text>
      );
    case "group":
      return (
        <g key={key} data-role={item.role} transform={transformOf(item)}>
          {item.window === undefined ? (
            <DrawingItems items={item.items} />
          ) : (
            <WindowedItems window={item.window} items={item.items} />
          )}
        </g>
      );
  }
}

/** An inner page shows nothing outside itself. */
function WindowedItems({ window, items }: { readonly window: Window; readonly items: readonly Item[] }) {
  const widthMm = window.maxX - window.minX;
  const heightMm = window.maxY - window.minY;
  return (
    <svg
      x={window.minX}
      y={window.minY}
      width={widthMm}
      height={heightMm}
      viewBox={`${window.minX} ${window.minY} ${widthMm} ${heightMm}`}
      aria-hidden="true"
    >
      <DrawingItems items={items} />
    </svg>
  );
}

type GroupItem = Extract<Item, { readonly kind: "group" }>;

function transformOf({ moveMm, turnDeg, scaleRatio }: GroupItem): string | undefined {
  const parts: string[] = [];
  if (moveMm[0] !== 0 || moveMm[1] !== 0) parts.push(`translate(${pair(moveMm)})`);
  if (turnDeg !== 0) parts.push(`rotate(${-turnDeg})`);
  if (scaleRatio !== 1) parts.push(`scale(${scaleRatio})`);
  return parts.length === 0 ? undefined : parts.join(" ");
}

/** A colour of the drawing as the theme has it (`styles/theme.css`); lighter ones are mixed with the theme's paper. */
export function inkOf({ name, strengthRatio }: Colour): string {
  const pure = `var(--draw-${name.replace(" ", "-")})`;
  if (strengthRatio === 1) return pure;
  return `color-mix(in srgb, ${pure} ${Math.round(strengthRatio * 1000) / 10}%, var(--paper))`;
}

/** The SVG path of a drawing's path; arcs stay arcs. */
export function pathData(path: Path): string {
  let data = `M${pair(path.start)}`;
  let from = path.start;
  for (const { to, bulge = 0 } of path.steps) {
    data += bulge === 0 ? `L${pair(to)}` : arcTo(from, to, bulge);
    from = to;
  }
  return path.closed ? `${data}Z` : data;
}

/** SVG's sweep flag 1 turns clockwise as seen; a bulge is positive anticlockwise as seen. */
function arcTo(from: PaperPoint, to: PaperPoint, bulge: number): string {
  const chordMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radius = rounded((chordMm * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${pair(to)}`;
}

function pair(point: PaperPoint): string {
  return `${rounded(point[0])} ${rounded(point[1])}`;
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
