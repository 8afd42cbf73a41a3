/** Signs of the rooms and tools, drawn as everything here: plain lines of one width. Their names stand beside them. */
import type { ReactNode } from "react";
import type { RoomId } from "./rooms.ts";

const SIGNS: Readonly<Record<RoomId, ReactNode>> = {
  // A board with a paper on it.
  jobs: <path d="M4 5h16v14H4zM7 9h10M7 12h10M7 15h6" />,
  // An ogee in its stick.
  section: <path d="M4 19V7h4c0 5 4 3 5 6s3 2 7 2v4z" />,
  // Three planes standing on a shelf.
  shelf: <path d="M3 19h18M5 19V8h3v11M10.5 19V5h3v14M16 19v-9h3v9" />,
  // A round sole in its hollow.
  cuts: <path d="M8 4h8v8a4 4 0 0 1-8 0zM3 14h3a6 6 0 0 0 12 0h3v6H3z" />,
  // Two pieces in a mitre.
  stick: <path d="M4 4h16v6H10v10H4zM4 4l6 6" />,
  // A lamp's rays on a face.
  light: <path d="M6 3v3M3 6h3M4 4l3 3M20 6c-6 0-4 6-10 7v8h10z" />,
  // A sheet with a folded corner.
  sheets: <path d="M6 3h9l4 4v14H6zM15 3v4h4M9 12h7M9 16h7" />,
};

function Sign({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

export function RoomIcon({ room }: { readonly room: RoomId }) {
  return <Sign>{SIGNS[room]}</Sign>;
}

export function UndoIcon() {
  return (
    <Sign>
      <path d="M9 6L4 11l5 5M4 11h10a5 5 0 0 1 0 10h-3" />
    </Sign>
  );
}

export function RedoIcon() {
  return (
    <Sign>
      <path d="M15 6l5 5-5 5M20 11H10a5 5 0 0 0 0 10h3" />
    </Sign>
  );
}
