/** Where two parts meet, each kind of join with its sign, and below the board what the signs mean. */
import { joinsOf, type Section } from "mouldwright/section";
import { useMemo } from "react";
import { HelpWord } from "../../../common/help-word.tsx";
import { type BoardView, onBoard } from "./board-view.ts";
import { type JoinSign, kindsOfJoins, signOf } from "./join-signs.ts";

function signsOf({ outline, stick, freeSpans }: Section) {
  return joinsOf(outline, freeSpans).map((join) => ({ join, sign: signOf(join, outline, stick) }));
}

export function JoinMarks({ section, view }: { readonly section: Section; readonly view: BoardView }) {
  const signs = useMemo(() => signsOf(section), [section]);
  return (
    <g className="joins">
      {signs.map(({ join: { piece, at }, sign }) => {
        if (sign === null) return null;
        const { x, y } = onBoard(view, at);
        return <SignMark key={piece} path={sign.path} x={x} y={y} />;
      })}
    </g>
  );
}

interface SignMarkProps {
  readonly path: string | null;
  readonly x: number;
  readonly y: number;
}

function SignMark({ path, x, y }: SignMarkProps) {
  if (path === null) return <circle className="line join" cx={x} cy={y} r={4} />;
  return <path className="line join-sign" transform={`translate(${x} ${y})`} d={path} />;
}

/** Each sign as it stands in the key, in a box of 24. */
const KEY: Readonly<Record<JoinSign["kind"], { readonly path: string | null; readonly face: string }>> = {
  smooth: { path: null, face: "M2 16Q8 8 12 12T22 8" },
  arris: { path: "M17.5 6.5L22 2", face: "M2 10H13V22" },
  quirk: { path: "M7 3L12 15L17 3", face: "M2 10Q8 8 12 15Q16 8 22 10" },
  step: { path: "M13 14V8H7V14", face: "M7 2V14H22" },
};

export function JoinKey({ section }: { readonly section: Section }) {
  const kinds = useMemo(() => kindsOfJoins(signsOf(section).map(({ sign }) => sign)), [section]);
  if (kinds.length === 0) return null;
  return (
    <ul className="join-key" aria-label="Signs at the joins">
      {kinds.map((kind) => {
        const { path, face } = KEY[kind];
        return (
          <li key={kind}>
            <svg className="join-key-sign" viewBox="0 0 24 24" aria-hidden="true">
              <path className="face" d={face} />
              {path === null ? <circle cx={12} cy={12} r={4} /> : <path d={path} />}
            </svg>
            {kind === "smooth" ? "runs on" : <HelpWord word={kind} />}
          </li>
        );
      })}
    </ul>
  );
}
