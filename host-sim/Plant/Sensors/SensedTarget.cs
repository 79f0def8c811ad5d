namespace LubeController.Plant.Sensors;

/// <summary>Whether a switch senses its target: by distance, with hysteresis, and by what covers its face.</summary>
internal sealed class SensedTarget(ProximitySwitchDescription description)
{
    internal bool Present { get; set; }

    /// <summary>How much further away than described the target stands, m.</summary>
    internal double OffsetM { get; set; }

    internal Soiling Soiling { get; set; }

    internal bool Sensed { get; private set; }

    internal bool Judge()
    {
        double reach = Sensed ? description.ReleaseDistanceM : description.SensingDistanceM;
        if (description.Principle == SensingPrinciple.Magnetic && Soiling == Soiling.MetalChips)
            reach /= 2;
        double distance = (Present ? description.TargetDistanceM : description.AwayDistanceM) + OffsetM;
        Sensed = Covered || distance <= reach;
        return Sensed;
    }

    private bool Covered => description.Principle switch
    {
        SensingPrinciple.Inductive => Soiling == Soiling.MetalChips,
        SensingPrinciple.Capacitive => Soiling != Soiling.Clean,
        _ => false,
    };
}
