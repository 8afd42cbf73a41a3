/** A sentence whose trade words say what they mean when they are pressed. */
import { HelpWord } from "./help-word.tsx";
import { piecesOf } from "./words-in-text.ts";

export function TradeText({ children }: { readonly children: string }) {
  return piecesOf(children).map((piece) =>
    piece.kind === "text" ? (
      piece.text
    ) : (
      <HelpWord key={piece.word} word={piece.word}>
        {piece.text}
      </HelpWord>
    ),
  );
}
