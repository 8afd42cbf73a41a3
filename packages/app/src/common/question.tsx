/** A question over the room: nothing behind it can be used until it is answered; Escape leaves everything as it was. */
import type { ReactNode } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import "./question.css";

export interface QuestionProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

export function Question({ title, isOpen, onClose, children }: QuestionProps) {
  return (
    <ModalOverlay
      className="question-shade"
      isOpen={isOpen}
      onOpenChange={(next) => {
        if (!next) onClose();
      }}
      isDismissable
    >
      <Modal className="question">
        <Dialog className="question-words">
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
