/** A job's way: an idea, chosen, fitted to the car, undone again. */
import { choiceWord } from "./fieldWords";

export function stateWord(state = "idea"): string {
  return choiceWord("job", "state", state).toLowerCase();
}
