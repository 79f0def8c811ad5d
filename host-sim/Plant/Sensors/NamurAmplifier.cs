using System;

namespace LubeController.Plant.Sensors;

/// <summary>A switching amplifier: turns the current of a NAMUR switch into a level, and tells breaks and shorts from it.</summary>
public sealed class NamurAmplifier(NamurAmplifierDescription description)
{
    private readonly NamurAmplifierDescription _description = description ?? throw new ArgumentNullException(nameof(description));
    private bool _high;

    /// <summary>What was read last.</summary>
    public NamurReading Reading { get; private set; } = NamurReading.Break;

    /// <summary>The level at its output.</summary>
    public bool On { get; private set; }

    /// <summary>Reads a current.</summary>
    /// <param name="currentA">A out of its terminal.</param>
    /// <returns>The level.</returns>
    public bool Read(double currentA)
    {
        Reading = Judge(currentA);
        if (Reading is NamurReading.Low or NamurReading.High)
            _high = Reading == NamurReading.High;
        On = Reading is NamurReading.Break or NamurReading.Short ? _description.OnAtFault : _high == _description.OnAtHighCurrent;
        return On;
    }

    private NamurReading Judge(double currentA)
    {
        if (!(currentA > _description.BreakA))
            return NamurReading.Break;
        if (currentA >= _description.ShortA)
            return NamurReading.Short;
        if (currentA <= _description.LowA)
            return NamurReading.Low;
        return currentA >= _description.HighA ? NamurReading.High : NamurReading.Between;
    }
}
