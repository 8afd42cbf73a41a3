import { useState } from "react";
import { Button } from "react-aria-components";
import { takeNewer, useOffline } from "./offline.ts";

/** Says that a newer build is ready. */
export function UpdateStrip({ whenSaved }: { readonly whenSaved: () => Promise<void> }) {
  const newer = useOffline((offline) => offline.newer);
  const [isLater, setLater] = useState(false);
  if (newer === null || isLater) return null;
  return (
    <div className="strip" role="status">
      <p>A newer Mouldwright is ready. Your jobs stay as they are; the page is loaded once more.</p>
      <div className="tools">
        <Button className="button button-main" onPress={() => void takeNewer(newer, whenSaved)}>
          Take it now
        </Button>
        <Button className="button" onPress={() => setLater(true)}>
          Later
        </Button>
      </div>
    </div>
  );
}
