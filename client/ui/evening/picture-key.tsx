import type { ComponentChildren } from "preact";

/** What the signs of the picture mean, in plain words. */
export function PictureKey() {
  return (
    <ul class="picture-key" aria-label="What the signs mean">
      <li>
        <Sign>
          <path class="key-awaited" d="M1 10H33" />
        </Sign>
        Dinner waits for these
      </li>
      <li>
        <Sign>
          <path class="lane-slack" d="M1 10H31M31 5V15" />
        </Sign>
        may start this much later
      </li>
      <li>
        <Sign>
          <path class="key-moment" d="M11 5V15M23 5V15" />
        </Sign>
        wants you for a moment
      </li>
      <li>
        <Sign>
          <rect class="key-done" x={2} y={3} width={30} height={14} rx={4} />
        </Sign>
        done
      </li>
      <li>
        <Sign>
          <g class="heat">
            <polygon points="1,18 1,16 16,4 33,4 33,18" />
            <polyline points="1,16 16,4 33,4" />
          </g>
        </Sign>
        heat of the oven
      </li>
    </ul>
  );
}

function Sign({ children }: { readonly children: ComponentChildren }) {
  return (
    <svg class="sign" width={34} height={20} viewBox="0 0 34 20" aria-hidden="true">
      {children}
    </svg>
  );
}
