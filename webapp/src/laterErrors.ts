/** The rows of the error table that only screens opened later tell: they come with what tells them. */
import { addErrors } from "./errors";
import { LATER_ERRORS } from "./generated/laterErrors";

addErrors(LATER_ERRORS);
