/** A page that comes in from the side (on a phone it fills the screen) and goes again with Escape or its button. */
import type { ReactNode } from "react";
import "./drawer.css";
import { Button, Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";

export interface DrawerProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

export function Drawer({ title, isOpen, onClose, children }: DrawerProps) {
  return (
    <ModalOverlay
      className="drawer-veil"
      isOpen={isOpen}
      isDismissable
      onOpenChange={(isNowOpen) => {
        if (!isNowOpen) onClose();
      }}
    >
      <Modal className="drawer">
        <Dialog className="drawer-page">
          <div className="drawer-head">
            <Heading slot="title" className="drawer-title">
              {title}
            </Heading>
            <Button className="button" onPress={onClose}>
              Close
            </Button>
          </div>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
