import { cautions } from "@/lib/views/cautions";

/** The cautions, at the foot of every page that shows figures. */
export function Cautions() {
  return (
    <section className="section cautions" aria-labelledby="cautions-title">
      <div className="section-side">
        <h2 id="cautions-title">Read with care</h2>
      </div>
      <ul className="section-main">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
