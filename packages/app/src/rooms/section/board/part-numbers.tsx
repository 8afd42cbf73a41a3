/** The parts' numbers over the drawing, each with what the shelf says of it: round if it can be made, a box if it cannot. */
import type { Verdict } from "../answer/verdicts.ts";
import { BALLOON_PX, type PartLabel } from "./part-labels.ts";

export interface PartNumbersProps {
  readonly labels: readonly PartLabel[];
  readonly verdicts: readonly Verdict[];
  readonly selected: number | null;
  readonly onSelect: (index: number) => void;
}

export function PartNumbers({ labels, verdicts, selected, onSelect }: PartNumbersProps) {
  return (
    <g className="part-numbers">
      {labels.map(({ index, balloon, leaderTo }) => {
        const isUncut = (verdicts[index]?.uncut.length ?? 0) > 0;
        const state = `${isUncut ? "uncut" : "cut"}${selected === index ? " selected" : ""}`;
        return (
          // Chosen by the list, the number is only a shorter way for the finger.
          <g key={index} className={`part-number ${state}`} onPointerUp={() => onSelect(index)}>
            <path
              className="line leader"
              d={`M${balloon.x} ${balloon.y + BALLOON_PX}L${leaderTo.x} ${leaderTo.y}`}
            />
            <circle className="leader-end" cx={leaderTo.x} cy={leaderTo.y} r={2.5} />
            <circle className="finger" cx={balloon.x} cy={balloon.y} r={22} />
            {isUncut ? (
              <rect
                className="balloon"
                x={balloon.x - BALLOON_PX}
                y={balloon.y - BALLOON_PX}
                width={2 * BALLOON_PX}
                height={2 * BALLOON_PX}
              />
            ) : (
              <circle className="balloon" cx={balloon.x} cy={balloon.y} r={BALLOON_PX} />
            )}
            <text className="balloon-figure" x={balloon.x} y={balloon.y + 4.5} textAnchor="middle">
              {index + 1}
            </text>
          </g>
        );
      })}
    </g>
  );
}
