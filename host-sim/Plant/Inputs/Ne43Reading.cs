namespace LubeController.Plant.Inputs;

/// <summary>What a 4-20 mA current means by NAMUR NE 43.</summary>
public enum Ne43Reading
{
    /// <summary>3.6 mA or less: the transmitter reports a failure, or the loop is broken.</summary>
    FailureLow,

    /// <summary>Between 3.6 and 3.8 mA: at the end of what it can show, neither valid nor a failure.</summary>
    UnderRange,

    /// <summary>3.8 to 20.5 mA: a measured value.</summary>
    Valid,

    /// <summary>Between 20.5 and 21 mA: at the end of what it can show, neither valid nor a failure.</summary>
    OverRange,

    /// <summary>21 mA or more: the transmitter reports a failure, or the loop is shorted.</summary>
    FailureHigh,
}
