/** Something about the home or its database that its keeper can put right: one plain sentence, no stack. */
export class HomeTrouble extends Error {
  override name = "HomeTrouble";
}
