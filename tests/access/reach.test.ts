import { describe, expect, it } from "vitest";
import { covers, mustCover } from "@/lib/access/people-bounds";
import {
  hasRole,
  holderReach,
  leadReach,
  narrowed,
  ownReach,
  peopleReach,
  qualityReach,
  recordsReach,
} from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { type Role, roles } from "@/lib/access/role";
import type { Grant, Viewer } from "@/lib/access/viewer";

// Expected values follow from the project's own roles (DEVELOPERS.md): who may see what is its decision.

const makers: Record<Exclude<Role, "clinician">, (viewer: Viewer) => object> = {
  "clinical-lead": leadReach,
  "quality-officer": qualityReach,
  "record-keeper": recordsReach,
  administrator: peopleReach,
};

describe("a reach is made for its own role and no other", () => {
  for (const [own, make] of Object.entries(makers)) {
    for (const role of roles) {
      it(`${own}'s reach, asked by a ${role}`, () => {
        const viewer = someone({ role });
        if (role === own) expect(make(viewer)).toBeTypeOf("object");
        else expect(() => make(viewer)).toThrow(Refused);
      });
    }
  }

  it("a refusal is a sentence that names the role", () => {
    expect(() => leadReach(someone({ role: "record-keeper" }))).toThrow(
      "This page is for the clinical lead; that is not one of your roles.",
    );
  });

  it("nobody's grants open nothing", () => {
    const nobody: Viewer = { userId: "n", name: "N", email: "n@example.org", grants: [] };
    for (const make of [...Object.values(makers), ownReach]) {
      expect(() => make(nobody)).toThrow(Refused);
    }
    expect(roles.some((role) => hasRole(nobody, role))).toBe(false);
  });
});

describe("how far a reach goes", () => {
  it("is the practices of that role's grants, not those of another role", () => {
    const viewer = someone(
      { role: "clinical-lead", practice: "P1" },
      { role: "record-keeper", practice: "P2" },
    );
    expect(leadReach(viewer).practices).toEqual(["P1"]);
    expect(recordsReach(viewer).practices).toEqual(["P2"]);
  });

  it("is all practices where one grant is of the group", () => {
    const viewer = someone(
      { role: "clinical-lead", practice: "P1" },
      { role: "clinical-lead", practice: null },
    );
    expect(leadReach(viewer).practices).toBeNull();
  });

  it("tells clinicians apart for the lead, never for the quality officer", () => {
    expect(leadReach(someone({ role: "clinical-lead" })).byClinician).toBe(true);
    expect(qualityReach(someone({ role: "quality-officer" })).byClinician).toBe(false);
  });

  it("is a clinician's own key, and refused without one", () => {
    const own = someone({ role: "clinician", practice: "P1", clinicianKey: "P1/C01" });
    expect(ownReach(own).clinicianKey).toBe("P1/C01");
    expect(() => ownReach(someone({ role: "clinician", practice: "P1" }))).toThrow(Refused);
    // A key on another role's grant is nobody's own figures.
    expect(() => ownReach(someone({ role: "clinical-lead", clinicianKey: "P1/C01" }))).toThrow(
      Refused,
    );
  });
});

describe("narrowing", () => {
  const reach = leadReach(someone({ role: "clinical-lead", practice: "P1" }));

  it("keeps within the reach", () => {
    expect(narrowed(reach, "P1").practices).toEqual(["P1"]);
    expect(narrowed(reach, undefined)).toBe(reach);
    expect(narrowed(holderReach().figures, "P9").practices).toEqual(["P9"]);
  });

  it("refuses a practice outside, in words", () => {
    expect(() => narrowed(reach, "P2")).toThrow("Practice P2 is not yours to see.");
  });

  it("does not give back what the role may not tell apart", () => {
    const quality = qualityReach(someone({ role: "quality-officer" }));
    expect(narrowed(quality, "P1").byClinician).toBe(false);
  });
});

describe("whom an administrator may change", () => {
  const ofOne = peopleReach(someone({ role: "administrator", practice: "P1" }));
  const ofGroup = peopleReach(someone({ role: "administrator" }));

  it("is bounded by practice", () => {
    expect(covers(ofOne, "P1")).toBe(true);
    expect(covers(ofOne, "P2")).toBe(false);
    expect(covers(ofOne, null)).toBe(false);
    expect(covers(ofGroup, null)).toBe(true);
    expect(covers(ofGroup, "P2")).toBe(true);
  });

  it("is refused in words beyond it", () => {
    expect(() => mustCover(ofOne, "P2")).toThrow(
      "You administer P1; practice P2 is not among them.",
    );
    expect(() => mustCover(ofOne, null)).toThrow(/administrator of the group/);
  });
});

function someone(...grants: (Partial<Grant> & { role: Role })[]): Viewer {
  return {
    userId: "u1",
    name: "Some One",
    email: "one@example.org",
    grants: grants.map((grant) => ({ practice: null, clinicianKey: null, ...grant })),
  };
}
