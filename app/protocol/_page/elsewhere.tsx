import { Link } from "@/app/_parts/link";
import type { CriterionElsewhere } from "@/lib/reports/protocol/criterion-page";
import { criterionAddress } from "@/lib/views/protocol/criterion-address";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";

/** A criterion of another practice, asked for of one that has not got it. */
export function Elsewhere(props: { id: string; of: CriterionElsewhere["elsewhere"] }) {
  const { title, practice, has } = props.of;
  return (
    <>
      <PageHead title={title} />
      <NothingToShow what={`${practice.name} has no such criterion.`}>
        <ul>
          <li>
            <Link href={`/protocol?practice=${encodeURIComponent(practice.code)}`}>
              The protocol of {practice.name}
            </Link>
          </li>
          {has.map((one) => (
            <li key={one.code}>
              <Link href={criterionAddress(props.id, one.code)}>The criterion in {one.name}</Link>
            </li>
          ))}
        </ul>
      </NothingToShow>
    </>
  );
}
