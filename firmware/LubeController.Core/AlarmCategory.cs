namespace LubeController.Core;

/// <summary>Categories of NAMUR NE 107, shown as text. Function check is driven by a phase, never by an alarm.</summary>
public enum AlarmCategory
{
    /// <summary>Failure: drops the healthy relay.</summary>
    Failure = 0,

    /// <summary>Out of specification: drives the warning output.</summary>
    OutOfSpecification = 1,

    /// <summary>Maintenance required: drives the warning output.</summary>
    MaintenanceRequired = 2,
}
