/** Where two parts meet: a ring where they run on smoothly, a wedge at a quirk; arris and step show in the line itself. */
import type { Join } from "mouldwright/section";
import { type BoardView, onBoard } from "./board-view.ts";

export function JoinMarks({ joins, view }: { readonly joins: readonly Join[]; readonly view: BoardView }) {
  return (
    <g className="joins">
      {joins.map(({ piece, at, kind, turnDeg }) => {
        const { x, y } = onBoard(view, at);
        // A level edge that only goes on past a named part is no join to speak of.
        if (kind === "smooth" && Math.abs(turnDeg) < 0.001 && at.y === 0) return null;
        switch (kind) {
          case "smooth":
            return <circle key={piece} className="line join" cx={x} cy={y} r={4} />;
          case "quirk":
            return (
              <path key={piece} className="line join" d={`M${x - 5} ${y - 8}L${x} ${y}L${x + 5} ${y - 8}`} />
            );
          default:
            return null;
        }
      })}
    </g>
  );
}
