namespace LubeController.Core;

/// <summary>The buttons, as they appear in <see cref="ScanEvents"/> and in the saved state.</summary>
public enum Button
{
    /// <summary>Start.</summary>
    Start = 0,

    /// <summary>Acknowledge.</summary>
    Acknowledge = 1,

    /// <summary>Reset.</summary>
    Reset = 2,

    /// <summary>Dose now.</summary>
    DoseNow = 3,

    /// <summary>Prime.</summary>
    Prime = 4,

    /// <summary>Output test.</summary>
    OutputTest = 5,
}
