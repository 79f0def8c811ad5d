using LubeController.Plant.Contacts;

namespace LubeController.Plant.Wiring;

/// <summary>One contact at work.</summary>
internal sealed class WiringContactState(WiringContact description, int output, int conductor)
{
    internal int Output { get; } = output;

    internal int Conductor { get; } = conductor;

    internal ContactSide Side { get; } = description.Side;

    internal bool Welded { get; set; }

    internal double ExtraOhms { get; set; }

    internal double Ohms(bool closed) => closed ? description.ClosedOhms + ExtraOhms : double.PositiveInfinity;
}
