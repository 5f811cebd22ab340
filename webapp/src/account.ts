/** What the ledger says of the garage now: apart from `answers`, for the first screen does without. */
import { computed } from "@preact/signals";
import { book, known } from "./answers";
import { ledger } from "./core/ledger/ledger";

export const account = computed(() => ledger(book.value, known.value));
