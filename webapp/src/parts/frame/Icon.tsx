/** Small line drawings of our own, one stroke weight, for doors and buttons. */
const PATHS = {
  car: "M3 16v-3l2-1 2.5-4h8l3.5 4 2 1v3M5.5 16a2 2 0 1 0 4 0 2 2 0 1 0-4 0m9 0a2 2 0 1 0 4 0 2 2 0 1 0-4 0M9.5 16h5",
  weigh: "M12 3v4M3 8.5h18M5 8.5v4M3 12.5h4l-.7 4H3.7zM16 8.5v3M13.8 11.5h4.4l1 6h-6.4z",
  jobs: "M4 7l2 2 3-4M12 7h8M4 13l2 2 3-4M12 13h8M12 19h8M5 19h3",
  yard: "M3 20V9M21 20V9M3 12h18M3 16h18M6 9l2-4h8l2 4",
  more: "M4 7h10M18 7h2M16 5v4M4 12h3M11 12h9M9 10v4M4 17h9M17 17h3M15 15v4",
  back: "M15 5l-7 7 7 7",
  camera: "M4 8h4l1.5-2.5h5L16 8h4v11H4zM9 13a3 3 0 1 0 6 0 3 3 0 1 0-6 0",
  picture: "M4 5h16v14H4zM4 16l5-5 4 4 3-3 4 4",
  erase: "M9 6h11v12H9l-6-6zM12 9.5l5 5M17 9.5l-5 5",
  plus: "M12 5v14M5 12h14",
  minus: "M5 12h14",
  close: "M6 6l12 12M18 6L6 18",
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="1.8"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <path d={PATHS[name]} />
    </svg>
  );
}
