namespace LubeController.Plant.Sensors;

/// <summary>What a switch responds to.</summary>
public enum SensingPrinciple
{
    /// <summary>Metal before its face; water does nothing, chips are metal too.</summary>
    Inductive,

    /// <summary>Anything before its face, water and chips among it.</summary>
    Capacitive,

    /// <summary>A magnet, as a reed does; iron chips on the magnet draw its field aside and halve the distance (assumed).</summary>
    Magnetic,

    /// <summary>Touch; water and chips do nothing.</summary>
    Mechanical,
}
