import type { LinkState } from "../kitchen/server-link.ts";

/** Before anything is known of the kitchen. */
export function WaitingPage({ link }: { readonly link: LinkState }) {
  return (
    <main class="waiting">
      <h1>{link === "lost" ? "The kitchen's server does not answer." : "Looking into the kitchen."}</h1>
      <p role="status">
        {link === "lost"
          ? "Start it again on the machine that it runs on. This page joins by itself as soon as it is there."
          : "A moment."}
      </p>
    </main>
  );
}
