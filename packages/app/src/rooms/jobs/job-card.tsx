import { useState } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { lengthWordsOf, stickWords } from "../../common/length-words.ts";
import { SectionThumb } from "../../common/section-thumb.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { fileNameOf, saveFile } from "../../keeping/files.ts";
import { deleteJob, duplicateJob, openJob } from "../../keeping/job-actions.ts";
import type { NewerJob, ReadableJob, UnreadableJob } from "../../keeping/record.ts";
import { BackupsQuestion } from "./backups-question.tsx";
import { NameQuestion } from "./name-question.tsx";
import { SaveQuestion } from "./save-question.tsx";
import { ShareQuestion } from "./share-question.tsx";
import { whenWords } from "./when-words.ts";

type Asked = "name" | "save" | "share" | "backups" | null;

const MORE = [
  { id: "name", words: "Name and notes" },
  { id: "duplicate", words: "Duplicate" },
  { id: "share", words: "Share" },
  { id: "save", words: "Save to a file" },
  { id: "backups", words: "Backups" },
  { id: "delete", words: "Delete" },
] as const;

export function JobCard({ kept, isOnBench }: { readonly kept: ReadableJob; readonly isOnBench: boolean }) {
  const [asked, setAsked] = useState<Asked>(null);
  const { job } = kept;
  const words = lengthWordsOf(job);
  const open = (): void => {
    void openJob(kept.jobId).then(() => {
      location.hash = "section";
    });
  };
  const onMore = (what: (typeof MORE)[number]["id"]): void => {
    if (what === "duplicate") void duplicateJob(kept);
    else if (what === "delete") void deleteJob(kept);
    else setAsked(what);
  };
  const close = (): void => setAsked(null);
  return (
    <li className={isOnBench ? "job-card job-card-on-bench" : "job-card"}>
      <Button className="job-open" onPress={open}>
        <span className="job-picture">
          <SectionThumb job={job} />
        </span>
        <span className="job-words">
          <span className="job-card-name">
            <span className="only-read">Open </span>
            {job.name}
          </span>
          <span className="figures">{stickWords(words, job.stick)}</span>
          <span className="quiet">{isOnBench ? "On the bench" : whenWords(kept.savedAtMs)}</span>
        </span>
      </Button>
      <MenuTrigger>
        <Button className="icon-button job-more" aria-label={`More for ${job.name}`}>
          <svg className="sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d="M5 12h.01M12 12h.01M19 12h.01" className="job-more-dots" />
          </svg>
        </Button>
        <Popover className="popover job-menu" placement="bottom end">
          <Menu aria-label={`For ${job.name}`}>
            {MORE.map(({ id, words }) => (
              <MenuItem key={id} id={id} className="job-menu-item" onAction={() => onMore(id)}>
                {words}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
      <NameQuestion kept={kept} isOpen={asked === "name"} onClose={close} />
      <SaveQuestion job={job} isOpen={asked === "save"} onClose={close} />
      <ShareQuestion job={job} isOpen={asked === "share"} onClose={close} />
      <BackupsQuestion kept={kept} isOpen={asked === "backups"} onClose={close} />
    </li>
  );
}

/** A job that cannot be opened here: why, and its file. */
export function LockedCard({ kept }: { readonly kept: NewerJob | UnreadableJob }) {
  const name = kept.name === "" ? "A job without a name" : kept.name;
  return (
    <li className="job-card job-card-locked">
      <div className="job-words">
        <span className="job-card-name">{name}</span>
        {kept.kind === "newer" ? (
          <p>
            A newer version of Mouldwright wrote this job. It is left as it is; load this page again to get
            that version, then open it.
          </p>
        ) : (
          <>
            <p>This job cannot be read. It is left as it is.</p>
            <TroubleWords troubles={kept.troubles} />
          </>
        )}
        <div className="tools">
          <Button
            className="button"
            onPress={() => saveFile(fileNameOf(name, "json"), kept.text, "application/json")}
          >
            Save it to a file as it is
          </Button>
        </div>
      </div>
    </li>
  );
}
