/** What this browser keeps and promises, how it looks, and what was thrown away. */
import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import { THEME_WISHES, useThemeWish, wishTheme } from "../../common/theme.ts";
import { destroyJob, takeOutAgain } from "../../keeping/job-actions.ts";
import { useKeeping } from "../../keeping/kept-jobs.ts";
import { askToPersist, type Persistence, type Room, roomNow } from "../../keeping/persistence.ts";
import { type KeptJob, nameOf } from "../../keeping/record.ts";
import { saveAllJobs } from "./save-all.ts";
import { whenWords } from "./when-words.ts";

const THEME_WORDS = { system: "As the system", light: "Light", dark: "Dark" } as const;
const THEMES = THEME_WISHES.map((value) => ({ value, words: THEME_WORDS[value] }));

export function ThisBrowser() {
  const theme = useThemeWish();
  return (
    <section className="panel this-browser" aria-labelledby="this-browser">
      <h2 id="this-browser">This browser</h2>
      <StorageAnswer />
      <div className="this-browser-row">
        <span id="theme-words">Colours</span>
        <Choice label="Colours" value={theme} options={THEMES} onChange={wishTheme} />
      </div>
      <Deleted />
    </section>
  );
}

function StorageAnswer() {
  const persistence = useKeeping(({ persistence }) => persistence);
  const store = useKeeping(({ store }) => store);
  const backupFailed = useKeeping(({ backupFailed }) => backupFailed);
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    void roomNow().then(setRoom);
  }, []);
  if (store === "none" || store === "read only") {
    return <p>Jobs are not kept here now. Save each one you want to keep to a file.</p>;
  }
  const ask = (): void => {
    void askToPersist().then((answer) => useKeeping.setState({ persistence: answer }));
  };
  return (
    <>
      <p>{persistenceWords(persistence)}</p>
      {backupFailed ? (
        <p className="trouble">There was no room for the last backup. The job itself is saved.</p>
      ) : null}
      <p className="quiet">
        Jobs stay in this browser on this machine, with up to ten backups each.
        {room === null ? "" : ` Used: ${megabytes(room.usedBytes)} of ${megabytes(room.ofBytes)}.`}
      </p>
      {persistence === "promised" ? null : (
        <div className="tools">
          <Button className="button" onPress={() => void saveAllJobs()}>
            Save a copy of all jobs
          </Button>
          {persistence === "not promised" ? (
            <Button className="button" onPress={ask}>
              Ask the browser again
            </Button>
          ) : null}
        </div>
      )}
    </>
  );
}

function persistenceWords(persistence: Persistence): string {
  switch (persistence) {
    case "promised":
      return "The browser has promised to keep your jobs until you clear its data yourself.";
    case "not promised":
      return "The browser has not promised to keep your jobs: it may clear them when room runs short or the page is not opened for some weeks. Save a copy to a file now and then.";
    case "unknown":
      return "The browser does not say whether it keeps your jobs for good. Save a copy to a file now and then.";
  }
}

function megabytes(bytes: number): string {
  const mb = bytes / 1e6;
  if (mb < 0.1) return "less than 0.1 MB";
  if (mb >= 1000) return `${Math.round(mb / 1000)} GB`;
  return `${mb < 10 ? mb.toFixed(1) : Math.round(mb)} MB`;
}

function Deleted() {
  const jobs = useKeeping(({ jobs }) => jobs);
  const deleted = jobs.filter(({ deletedAtMs }) => deletedAtMs !== undefined);
  if (deleted.length === 0) return null;
  return (
    <>
      <h3>Deleted jobs</h3>
      <p className="quiet">They stay for 30 days.</p>
      <ul className="deleted-list">
        {deleted.map((kept) => (
          <DeletedRow key={kept.jobId} kept={kept} />
        ))}
      </ul>
    </>
  );
}

function DeletedRow({ kept }: { readonly kept: KeptJob }) {
  const [isSure, setSure] = useState(false);
  const name = nameOf(kept);
  return (
    <li className="this-browser-row">
      <span>
        {name} <span className="quiet">{whenWords(kept.deletedAtMs ?? 0)}</span>
      </span>
      <span className="tools">
        <Button
          className="button"
          onPress={() => void takeOutAgain(kept.jobId)}
          aria-label={`Take out again: ${name}`}
        >
          Take out again
        </Button>
        {isSure ? (
          <>
            <Button className="button" onPress={() => void destroyJob(kept.jobId)}>
              Yes, with its backups
            </Button>
            <Button className="button" onPress={() => setSure(false)}>
              Leave it
            </Button>
          </>
        ) : (
          <Button className="button" onPress={() => setSure(true)} aria-label={`Destroy for good: ${name}`}>
            Destroy for good
          </Button>
        )}
      </span>
    </li>
  );
}
