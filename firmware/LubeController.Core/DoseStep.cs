namespace LubeController.Core;

/// <summary>
/// What a dose by pressure is doing, on a single-line system whose injectors discharge when the line's pressure rises and
/// recharge once it has fallen. The table stands in <c>firmware/PHASES.md</c>.
/// </summary>
public enum DoseStep
{
    /// <summary>No dose by pressure is under way.</summary>
    None = 0,

    /// <summary>Pump off, vent valve open: the injectors must be recharged before the pump may run.</summary>
    Recharge = 1,

    /// <summary>Pump on, vent valve closed, until line pressure is reached.</summary>
    Pressurise = 2,

    /// <summary>Pump on, vent valve closed: line pressure must last, so that every injector discharges.</summary>
    Hold = 3,

    /// <summary>Pump off, vent valve open: pressure was held; once the injectors are recharged the pressure cycle counts.</summary>
    Vent = 4,
}
