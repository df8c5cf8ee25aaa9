/** The viewer may not see or do this. The sentence is for them. */
export class Refused extends Error {
  override readonly name = "Refused";
}
