/** Cross weight: what is promised and what is not. */
import { Disclosure } from "../../parts/controls/Disclosure";
import { FieldOf } from "../../parts/forms/FieldOf";
import type { Form } from "../../parts/forms/form";

export function Cross({ form }: { form: Form<"car"> }) {
  return (
    <Disclosure title="What this says of cross weight, and what not">
      <p>
        Cross weight, right front and left rear against the whole, is set by the spring seats. Ballast shifts it only as
        far as it sits off the centreline and as front and rear springs and bars share the car's roll. Blocks that
        balance each other left to right shift it least, whatever the springs are.
      </p>
      <p>
        What the cross weight then is, nobody can work out: weigh the corners with the ballast fitted, and set the
        springs.
      </p>
      <FieldOf form={form} name="roll_front" />
    </Disclosure>
  );
}
