/** What no program can take off the cook's hands. */
export function Cautions() {
  return (
    <aside class="cautions" aria-label="Before you begin">
      <p>
        <b>On a diet for your health?</b> Your clinician decides what you may eat. Stovecall gives no medical
        advice: it holds recipes against the diet that you have written down. Read every label yourself.
      </p>
      <p>
        <b>Heat and knives are yours to mind.</b> Times are a guide: look, smell, and measure before you trust
        them. Never leave a hot stove alone.
      </p>
    </aside>
  );
}
