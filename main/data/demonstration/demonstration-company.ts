import type { InputOf } from "#shared-lib/contract/operations.ts";

/** Everybody and everything here is invented. */
export const companyName = "Marram Lift Care";

export const demonstrationPeople: readonly InputOf<"person.add">[] = [
  { name: "Orla Vance", role: "office", telephone: "555 0100", onDuty: true, startScreen: "desk" },
  { name: "Bram Oakes", role: "engineer", telephone: "555 0111", onDuty: true, startScreen: "find" },
  { name: "Ines Calder", role: "engineer", telephone: "555 0112", onDuty: true, startScreen: "find" },
  { name: "Suri Fenn", role: "engineer", telephone: "555 0113", onDuty: true, startScreen: "find" },
  { name: "Teo Marlow", role: "engineer", telephone: "555 0114", startScreen: "find" },
  { name: "Hedda Quill", role: "team lead", telephone: "555 0120", onDuty: true, startScreen: "review" },
];

type LiftType = "gearless" | "geared" | "machine-room-less" | "hydraulic";

export interface LiftPlan {
  readonly name: string;
  readonly type: LiftType;
  readonly landings: number;
  /** How many callouts this lift draws beside the others. */
  readonly trouble: number;
  readonly controllerFamily: "Tern" | "Dunlin" | "Petrel";
}

export interface SitePlan {
  readonly site: InputOf<"site.add">;
  readonly callers: readonly string[];
  readonly lifts: readonly LiftPlan[];
}

const families = ["Tern", "Dunlin", "Petrel"] as const;

/** "Lift 1 geared 6 Tern 1.5": name, type, landings, controller family, trouble. */
function lift(text: string): LiftPlan {
  const parts = text.split(", ");
  const [name, type, landings, family, trouble] = parts;
  const controllerFamily = families.find((known) => known === family);
  if (!name || !type || !landings || !controllerFamily)
    throw new Error(`a lift plan cannot be read: ${text}`);
  return {
    name,
    type: type as LiftType,
    landings: Number(landings),
    controllerFamily,
    trouble: Number(trouble ?? 1),
  };
}

function site(
  name: string,
  street: string,
  details: Partial<InputOf<"site.add">>,
  callers: string,
  lifts: readonly string[],
): SitePlan {
  return {
    site: { name, street, town: "Wendle Bay", ...details },
    callers: callers.split(", "),
    lifts: lifts.map(lift),
  };
}

export const demonstrationSites: readonly SitePlan[] = [
  site(
    "Kittiwake House",
    "1 Quay Road",
    {
      accessNotes: "Ring the porter. Yard gate closes at 18:00.",
      keys: "Controller cabinet key at the porter's desk",
      hours: "07:00 to 22:00",
      machineryLocation: "Head of the shaft; controller at the top landing",
      contactName: "Edda Crane, porter",
      contactTelephone: "555 0130",
    },
    "Edda Crane, Mr Tolley from flat 31",
    ["Lift 1, machine-room-less, 8, Dunlin, 1", "Lift 2, machine-room-less, 8, Dunlin, 1.2"],
  ),
  site(
    "Saltpan Court",
    "4 Saltpan Lane",
    {
      accessNotes: "Intercom 9 for the caretaker.",
      keys: "Machine room key in the red box, code with the office",
      machineryLocation: "Machine room on the roof",
      contactName: "Wenna Alder, caretaker",
      contactTelephone: "555 0142",
    },
    "Wenna Alder, A resident",
    ["Lift 1, geared, 6, Tern, 1.4", "Lift 2, geared, 6, Tern, 0.8"],
  ),
  site(
    "Old Ropery Lofts",
    "12 Ropewalk",
    {
      accessNotes: "Front door code with the office.",
      machineryLocation: "Head of the shaft",
      contactName: "Piers Lomax, managing agent",
      contactTelephone: "555 0151",
    },
    "Piers Lomax, A tenant",
    ["Lift 1, machine-room-less, 5, Dunlin, 0.5"],
  ),
  site(
    "Wendle Bay Infirmary",
    "Hospital Rise",
    {
      accessNotes: "Report to the estates office first. Bed traffic has priority.",
      hours: "day and night",
      keys: "Estates office",
      machineryLocation: "Plant room, level 6",
      contactName: "Estates desk",
      contactTelephone: "555 0160",
    },
    "Estates desk, Ward sister",
    [
      "Bed lift 1, gearless, 6, Petrel, 1.2",
      "Bed lift 2, gearless, 6, Petrel, 1.8",
      "Visitors’ lift, gearless, 6, Petrel, 1.3",
      "Kitchen lift, hydraulic, 3, Tern, 0.8",
    ],
  ),
  site(
    "Net Loft Studios",
    "7 Fish Street",
    { machineryLocation: "Cupboard beside landing 0", contactName: "Lio Sand", contactTelephone: "555 0117" },
    "Lio Sand, A potter on the second floor",
    ["Lift 1, hydraulic, 4, Tern, 1"],
  ),
  site(
    "Breakwater Hotel",
    "Promenade 2",
    {
      accessNotes: "Service entrance in the lane.",
      hours: "day and night",
      machineryLocation: "Basement",
      contactName: "Night manager",
      contactTelephone: "555 0171",
    },
    "Night manager, Housekeeping",
    ["Guest lift, gearless, 9, Petrel, 1.2", "Service, geared, 10, Tern, 1.6"],
  ),
  site(
    "Limekiln Mill",
    "Mill Yard",
    {
      accessNotes: "Loading bay; hard hat.",
      machineryLocation: "Pump room, level 0",
      contactName: "Yard office",
      contactTelephone: "555 0180",
    },
    "Yard office",
    ["Goods lift, hydraulic, 3, Tern, 1.3", "Passenger lift, hydraulic, 4, Dunlin, 0.7"],
  ),
  site(
    "Fulmar Terrace",
    "20 Cliff Road",
    {
      machineryLocation: "Machine room above the shaft",
      contactName: "Residents’ office",
      contactTelephone: "555 0190",
    },
    "Residents’ office, Mrs Hale",
    ["Lift 1, geared, 7, Tern, 0.4", "Lift 2, geared, 7, Tern, 0.9"],
  ),
  site(
    "Gannet Row",
    "3 Gannet Row",
    { machineryLocation: "Head of the shaft", contactName: "Caretaker’s flat", contactTelephone: "555 0201" },
    "Caretaker’s flat, A resident",
    ["Lift 1, machine-room-less, 7, Dunlin, 1", "Lift 2, machine-room-less, 7, Dunlin, 1.5"],
  ),
  site(
    "Harbour Steps",
    "Harbour Steps 1",
    {
      accessNotes: "Public lift, sea wall. Salt air.",
      hours: "06:00 to 23:00",
      machineryLocation: "Kiosk at the lower landing",
      contactName: "Harbour office",
      contactTelephone: "555 0210",
    },
    "Harbour office, A walker",
    ["Lift 1, machine-room-less, 2, Dunlin, 1.6", "Lift 2, machine-room-less, 2, Dunlin, 1.1"],
  ),
  site(
    "Curlew Wharf",
    "Wharf Lane 5",
    { machineryLocation: "Roof", contactName: "Reception", contactTelephone: "555 0220" },
    "Reception",
    [
      "North lift, gearless, 12, Petrel, 1",
      "South lift, gearless, 12, Petrel, 1",
      "Fire-fighting lift, gearless, 14, Petrel, 0.7",
    ],
  ),
  site(
    "Dunlin Place",
    "9 Marsh Street",
    { machineryLocation: "Head of the shaft", contactName: "Housing office", contactTelephone: "555 0230" },
    "Housing office, A resident",
    [
      "Lift A, machine-room-less, 5, Dunlin, 0.9",
      "Lift B, machine-room-less, 5, Dunlin, 0.9",
      "Lift C, machine-room-less, 4, Dunlin, 0.6",
    ],
  ),
  site(
    "Customs House",
    "Custom Quay",
    {
      machineryLocation: "Machine room in the attic",
      contactName: "Front desk",
      contactTelephone: "555 0240",
    },
    "Front desk",
    ["Lift 1, geared, 4, Tern, 1.1"],
  ),
  site(
    "Sandpiper School",
    "School Lane",
    {
      accessNotes: "Sign in at the office; pupils in the corridors.",
      hours: "07:30 to 17:00",
      machineryLocation: "Store beside the hall",
      contactName: "School office",
      contactTelephone: "555 0250",
    },
    "School office",
    ["Lift 1, hydraulic, 2, Dunlin, 0.6"],
  ),
  site(
    "Tidewater Library",
    "Market Square",
    { machineryLocation: "Basement", contactName: "Library desk", contactTelephone: "555 0260" },
    "Library desk",
    ["Public lift, machine-room-less, 4, Tern, 0.8", "Book lift, geared, 4, Tern, 0.3"],
  ),
  site(
    "Salters’ Arcade",
    "High Street 40",
    {
      machineryLocation: "Head of the shaft",
      contactName: "Centre management",
      contactTelephone: "555 0270",
    },
    "Centre management, A shopkeeper",
    [
      "Panorama lift, machine-room-less, 3, Petrel, 1.7",
      "Car park lift 1, machine-room-less, 5, Dunlin, 1.3",
      "Car park lift 2, machine-room-less, 5, Dunlin, 1.2",
    ],
  ),
  site(
    "Beacon Tower",
    "Beacon Hill 1",
    { machineryLocation: "Machine room, level 14", contactName: "Concierge", contactTelephone: "555 0280" },
    "Concierge, A resident",
    ["Lift 1, gearless, 14, Petrel, 1.1", "Lift 2, gearless, 14, Petrel, 1.1"],
  ),
  site(
    "Oyster Yard",
    "Oyster Yard 6",
    {
      machineryLocation: "Pump cupboard, level 0",
      contactName: "Works office",
      contactTelephone: "555 0290",
    },
    "Works office",
    ["Goods lift, hydraulic, 2, Tern, 1"],
  ),
  site(
    "Marsh View",
    "Marsh View 11",
    { machineryLocation: "Head of the shaft", contactName: "Warden", contactTelephone: "555 0300" },
    "Warden, A resident",
    ["Lift 1, machine-room-less, 4, Dunlin, 0.8", "Lift 2, machine-room-less, 4, Dunlin, 0.8"],
  ),
  site(
    "Ferry Terminal",
    "Pier Head",
    {
      hours: "05:00 to 24:00",
      machineryLocation: "Kiosk on the upper deck",
      contactName: "Terminal control",
      contactTelephone: "555 0310",
    },
    "Terminal control",
    ["Passenger lift, machine-room-less, 3, Petrel, 1.4", "Vehicle deck lift, hydraulic, 3, Tern, 1.1"],
  ),
];
