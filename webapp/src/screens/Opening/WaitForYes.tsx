/** The code was right: two words to compare, and somebody at home has to let this phone in. */

import { useEffect, useState } from "preact/hooks";
import { stopWaiting, type Waiting } from "../../garage/joining";
import { Button } from "../../parts/frame/Button";

export function WaitForYes({ words, until }: Waiting) {
  const left = useMinutesLeft(until);
  return (
    <div class="stack">
      <h1>Now say yes at home</h1>
      <p>On the home computer, let in the phone that shows these two words:</p>
      <p class="check-words">{words.join(" · ")}</p>
      <p>If it shows other words there, that is not this phone: refuse it.</p>
      <p class="quiet" role="status">
        Waiting for the home computer. {left}
      </p>
      <Button look="wide" label="Stop waiting" onClick={stopWaiting} />
    </div>
  );
}

function useMinutesLeft(until: number): string {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 5_000);
    return () => clearInterval(timer);
  }, []);
  const minutes = Math.ceil((until - now) / 60_000);
  return minutes > 1 ? `The code is good for ${minutes} more minutes.` : "The code is good for less than a minute.";
}
