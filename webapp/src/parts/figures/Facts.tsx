/** Plain facts in two columns: what, and its value with how that was understood below it. */
import "./Facts.css";

export type Fact = { name: string; value: string; under?: string; href?: string };

export function Facts({ rows }: { rows: readonly Fact[] }) {
  return (
    <dl class="facts">
      {rows.map(({ name, value, under, href }) => (
        <div key={name} class="fact">
          <dt>{name}</dt>
          <dd class="num">
            {href ? <a href={href}>{value}</a> : value}
            {under && <span class="small quiet">{under}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
