/** Where trade words stand in a sentence, so that each can say what it means. */
import { TRADE_WORDS, type TradeWord } from "./trade-words.ts";

export type TextPiece =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "word"; readonly text: string; readonly word: TradeWord };

/** Other forms in which a word of the list stands in sentences. */
const FORMS: Readonly<Partial<Record<TradeWord, readonly string[]>>> = {
  hollow: ["hollows"],
  round: ["rounds"],
  "snipe bill": ["snipe bills"],
  "rebate plane": ["rebate planes"],
  quirk: ["quirks"],
  fillet: ["fillets"],
  bead: ["beads"],
  arris: ["arrises"],
  astragal: ["astragals"],
  lean: ["leaned", "leans"],
  seat: ["seats"],
  setting: ["settings"],
  mitre: ["mitres"],
  plough: ["ploughs"],
  "long point": ["long points"],
  scribe: ["scribed", "scribes"],
};

/** Longer words first, so that a rebate plane is not taken for a word within it. */
const WORD_OF: ReadonlyMap<string, TradeWord> = new Map(
  (Object.keys(TRADE_WORDS) as TradeWord[])
    .flatMap((word) => [word, ...(FORMS[word] ?? [])].map((form) => [form, word] as const))
    .sort(([one], [other]) => other.length - one.length),
);
const ANY_WORD = new RegExp(`(?<![\\p{L}-])(?:${[...WORD_OF.keys()].join("|")})(?![\\p{L}-])`, "giu");

/** The sentence in pieces; each word is marked where it stands first, for one sign of it is enough. */
export function piecesOf(text: string): readonly TextPiece[] {
  const pieces: TextPiece[] = [];
  const told = new Set<TradeWord>();
  let at = 0;
  for (const match of text.matchAll(ANY_WORD)) {
    const word = WORD_OF.get(match[0].toLowerCase());
    if (word === undefined || told.has(word)) continue;
    told.add(word);
    if (match.index > at) pieces.push({ kind: "text", text: text.slice(at, match.index) });
    pieces.push({ kind: "word", text: match[0], word });
    at = match.index + match[0].length;
  }
  if (at < text.length) pieces.push({ kind: "text", text: text.slice(at) });
  return pieces;
}
