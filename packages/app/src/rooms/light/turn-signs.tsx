/** Signs of the turning view's buttons: plain lines, as everything here. Their names stand on the buttons. */
import type { ReactNode } from "react";
import type { TurnKey } from "./turn.ts";

const SIGNS: Readonly<Record<TurnKey | "first", ReactNode>> = {
  ArrowLeft: <path d="M20 12H5M10 6l-6 6 6 6" />,
  ArrowRight: <path d="M4 12h15M14 6l6 6-6 6" />,
  ArrowUp: <path d="M12 20V5M6 10l6-6 6 6" />,
  ArrowDown: <path d="M12 4v15M6 14l6 6 6-6" />,
  "+": <path d="M12 5v14M5 12h14" />,
  "-": <path d="M5 12h14" />,
  first: <path d="M6 9a7 7 0 1 1-1 5M6 4v5h5" />,
};

export function TurnSign({ turn }: { readonly turn: TurnKey | "first" }) {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      {SIGNS[turn]}
    </svg>
  );
}
