/** The menu of parts, each with its picture and what it does. */

import type { PartKind } from "mouldwright/section";
import { memo } from "react";
import {
  Button,
  Header,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Text,
} from "react-aria-components";
import { KIND_WORDS, KINDS_IN_MENU } from "../chain/fresh-part.ts";
import { PartPicture } from "./part-picture.tsx";

export interface AddPartProps {
  /** Where it will stand: "after the ogee". */
  readonly where: string;
  readonly onAdd: (kind: PartKind) => void;
}

export const AddPart = memo(function AddPart({ where, onAdd }: AddPartProps) {
  const kinds = KINDS_IN_MENU.flatMap((group) => group.kinds);
  const add = (key: unknown): void => {
    const kind = kinds.find((one) => one === key);
    if (kind !== undefined) onAdd(kind);
  };
  return (
    <MenuTrigger>
      <Button className="button add-part">Add a part {where}</Button>
      <Popover className="popover part-menu-popover" placement="top start">
        <Menu className="part-menu" onAction={add} aria-label="Kinds of part">
          {KINDS_IN_MENU.map(({ group, kinds: own }) => (
            <MenuSection key={group} className="part-menu-section">
              <Header className="part-menu-head">{group}</Header>
              {own.map((kind) => (
                <MenuItem key={kind} id={kind} className="part-menu-item" textValue={KIND_WORDS[kind].name}>
                  <PartPicture kind={kind} />
                  <Text slot="label" className="part-menu-name">
                    {KIND_WORDS[kind].name}
                  </Text>
                  <Text slot="description" className="part-menu-does">
                    {KIND_WORDS[kind].does}
                  </Text>
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
});
