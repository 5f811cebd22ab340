/** What this phone alone prefers, such as the car it looks at: not part of the journal, lost without harm. */
import { type ReadonlySignal, signal } from "@preact/signals";
import { drafts } from "./drafts";

const car = signal<string | null>(null);
export const chosenCar: ReadonlySignal<string | null> = car;

const NAME = "choice:car";

/** Recalls what was chosen in the garage just opened. */
export async function loadChoices(): Promise<void> {
  car.value = await drafts.load<string>(NAME).catch(() => null);
}

export async function chooseCar(id: string): Promise<void> {
  car.value = id;
  await drafts.keep(NAME, id);
}
