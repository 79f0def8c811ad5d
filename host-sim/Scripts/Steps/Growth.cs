namespace LubeController.Scripts.Steps;

/// <summary>A fault on its way from its harmless magnitude to the one written, in equal steps of time and magnitude.</summary>
/// <param name="step">The step that set it.</param>
/// <param name="fault">What it becomes.</param>
/// <param name="startUs">When it was set, microseconds.</param>
internal sealed class Growth(Step step, SetFault fault, long startUs)
{
    /// <summary>Steps in which a fault grows: each changes its magnitude by less than a gauge shows.</summary>
    public const int Steps = 64;

    private int _taken;

    public Step Step => step;

    public SetFault Fault => fault;

    /// <summary>Whether the magnitude written is reached.</summary>
    public bool IsOver => _taken == Steps;

    /// <summary>When the next step is due, microseconds.</summary>
    public long NextUs => startUs + (long)((decimal)fault.OverUs * (_taken + 1) / Steps);

    /// <summary>Takes the next step.</summary>
    public GrowFault Next()
    {
        _taken++;
        double harmless = fault.Kind.HarmlessMagnitude!.Value;
        double written = fault.MagnitudeSi!.Value;
        return new GrowFault(fault.Kind, fault.Part, IsOver ? written : harmless + ((written - harmless) * ((double)_taken / Steps)));
    }
}
