using LubeController.Plant.Contacts;

namespace LubeController.Plant.Wiring;

/// <summary>A supply of the wiring.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="Plus">Terminal at its plus.</param>
/// <param name="Minus">Terminal at its minus.</param>
/// <param name="VoltageV">V, above 0 and at most 60.</param>
/// <param name="InsideOhms">Resistance inside, ohm, 0.001 to 1000.</param>
public sealed record WiringSupply(string Name, string Plus, string Minus, double VoltageV, double InsideOhms = 0.1);

/// <summary>A fuse.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="RatedA">It blows above this current, A, above 0 and at most 100.</param>
/// <param name="Ohms">Resistance when whole, ohm.</param>
public sealed record WiringFuse(string Name, string From, string To, double RatedA, double Ohms = 0.05);

/// <summary>A wire.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="Ohms">Resistance when whole, ohm, 0.001 to 1000.</param>
public sealed record WiringWire(string Name, string From, string To, double Ohms = 0.5);

/// <summary>How an output's relay moves; an output without one moves its contacts at once and without bounce.</summary>
/// <param name="Output">The output.</param>
/// <param name="Contact">Its delays and its bounce.</param>
public sealed record WiringRelay(string Output, OutputContactDescription Contact);

/// <summary>One side of an output relay's changeover contact.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="Output">The output that moves it.</param>
/// <param name="Side">The side.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="ClosedOhms">Resistance when closed, ohm.</param>
public sealed record WiringContact(string Name, string Output, ContactSide Side, string From, string To, double ClosedOhms = 0.1);

/// <summary>A filament lamp.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="RatedV">V.</param>
/// <param name="RatedW">W.</param>
public sealed record WiringLamp(string Name, string From, string To, double RatedV, double RatedW);

/// <summary>The coil of an interposing relay.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="Ohms">Resistance, ohm.</param>
/// <param name="PullInV">It pulls in at this voltage, V.</param>
/// <param name="DropOutV">It drops out at this voltage, V, lower.</param>
public sealed record WiringCoil(string Name, string From, string To, double Ohms, double PullInV, double DropOutV);

/// <summary>A contact of an interposing relay.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="Coil">Name of its coil.</param>
/// <param name="Side">The side.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="ClosedOhms">Resistance when closed, ohm.</param>
public sealed record WiringCoilContact(string Name, string Coil, ContactSide Side, string From, string To, double ClosedOhms = 0.1);

/// <summary>A resistor, for instance at the end of a line.</summary>
/// <param name="Name">Name, unique among all parts.</param>
/// <param name="From">One terminal.</param>
/// <param name="To">The other terminal.</param>
/// <param name="Ohms">ohm.</param>
public sealed record WiringResistor(string Name, string From, string To, double Ohms);
