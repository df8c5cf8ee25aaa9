import { peopleReach } from "@/lib/access/reach";
import { listPlaces } from "@/lib/reports/places";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../_parts/answering-form";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { changePracticeAct } from "./acts";
import { Codes } from "./codes";

export const metadata = { title: "Practices" };

export default async function PracticesPage() {
  const viewer = await currentViewer();
  const places = await within("/administration/practices", () => listPlaces(peopleReach(viewer)));
  return (
    <>
      <PageHead
        title="Practices"
        lead="Practices, chairs and clinicians' codes appear when records name them. Here they get names, and a typing mistake is noticed before it becomes a chair."
      />
      {places.length === 0 ? (
        <NothingToShow what="No practice is known yet.">
          <p>A record keeper brings records in; every practice that they name appears here.</p>
        </NothingToShow>
      ) : null}
      {places.map((place) => (
        <Section
          key={place.code}
          id={`practice-${place.code}`}
          title={place.name}
          note={place.confirmed ? `Code ${place.code}` : `Code ${place.code}, not looked at yet`}
        >
          <AnsweringForm
            act={changePracticeAct}
            hidden={{ practice: place.code }}
            button={place.confirmed ? "Save" : "Save and confirm"}
            label={`Name and time zone of ${place.code}`}
            fields={[
              { label: "Name", name: "name", defaultValue: place.name, required: true },
              {
                label: "Time zone",
                name: "zone",
                defaultValue: place.zone,
                required: true,
                readOnly: place.hasVisits,
                hint: place.hasVisits
                  ? "Fixed while the practice has visits: another zone would put them on other days."
                  : "As Europe/London. It decides on which day a visit lies, and is fixed once visits are in.",
              },
            ]}
          />
          <div className="columns">
            <Codes practice={place.code} kind="chair" title="Chairs" codes={place.chairs} />
            <Codes
              practice={place.code}
              kind="clinician"
              title="Clinicians' codes"
              codes={place.clinicians}
            />
          </div>
        </Section>
      ))}
    </>
  );
}
