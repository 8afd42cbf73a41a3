/** A trade word where it stands, with what it means behind it: press or Enter opens it, Escape closes it. */
import { Button, Dialog, DialogTrigger, Popover } from "react-aria-components";
import { TRADE_WORDS, type TradeWord } from "./trade-words.ts";

export function HelpWord({ word, children }: { readonly word: TradeWord; readonly children?: string }) {
  return (
    <DialogTrigger>
      <Button className="help-word" aria-label={`${children ?? word}: what it means`}>
        {children ?? word}
      </Button>
      <Popover className="popover" placement="bottom start">
        <Dialog className="help" aria-label={word}>
          <strong>{word}</strong> {TRADE_WORDS[word]}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
