namespace LubeController.Plant.Sensors;

/// <summary>Where on the line something is fitted.</summary>
public enum LinePlace
{
    /// <summary>At the pump's outlet.</summary>
    Pump,

    /// <summary>At the end of the line: the divider's inlet, or behind the last injector.</summary>
    End,
}
