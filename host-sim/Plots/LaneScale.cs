namespace LubeController.Plots;

/// <summary>Where lanes stand on the axis of pressure: below zero, in parts of its upper end.</summary>
/// <param name="MostBar">Upper end of the pressure scale, bar.</param>
internal readonly record struct LaneScale(double MostBar)
{
    /// <summary>From one lane to the next, bar.</summary>
    public double PitchBar => 0.12 * MostBar;

    /// <summary>From off to on, bar.</summary>
    public double HeightBar => 0.07 * MostBar;

    /// <summary>From one tick of pressure to the next, bar.</summary>
    public double StepBar => MostBar > 100 ? 50 : MostBar > 60 ? 20 : 10;

    /// <summary>Where a lane's off stands, bar, negative.</summary>
    public double FloorBar(int lane) => -PitchBar * (lane + 1.1);
}
