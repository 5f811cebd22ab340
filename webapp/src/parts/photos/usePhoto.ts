/** A photo's blob: address for as long as it is looked at. */
import { useEffect, useState } from "preact/hooks";
import { type Found, photoUrl } from "../../garage/photos";

export function usePhoto(sha256: string, size: "thumb" | "full"): Found {
  const [photo, setPhoto] = useState<Found>(null);
  useEffect(() => {
    let live = true;
    void photoUrl(sha256, size).then((found) => live && setPhoto(found));
    return () => {
      live = false;
    };
  }, [sha256, size]);
  return photo;
}
