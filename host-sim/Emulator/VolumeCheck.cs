using System;
using System.Linq;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>
/// Asserted on every run: no lubricant appears or vanishes, and the trip points were crossed as often as the pistons'
/// displacement says, give or take one cycle, where one wave goes round from a start with every piston at an end.
/// </summary>
internal sealed class VolumeCheck(LubricationSystem plant)
{
    private const double MostError = 1e-9;

    private readonly int _wavesAtStart = plant.Waves;
    private readonly bool _startedMidTravel = plant.Description.AllSections.Any(section => section.InitialTravel is > 0.0 and < 1.0);

    /// <summary>Checks a run that has ended; notes where crossings are not compared.</summary>
    /// <exception cref="InvalidOperationException">Volumes do not balance.</exception>
    public void Check(Trace trace)
    {
        double error = plant.Balance().RelativeError;
        if (error > MostError)
            throw new InvalidOperationException($"Plant '{plant.Description.Name}': the volume balance is off by {error:R} of what was pumped, more than {MostError:R}.");
        if (_wavesAtStart != 1 || _startedMidTravel || plant.Waves != 1)
        {
            trace.Note(plant.NowUs, "divider", $"{plant.Waves} waves, {_wavesAtStart} at the start{(_startedMidTravel ? ", pistons in mid-travel" : "")}: trip crossings are not compared with displacement");
            return;
        }

        for (int index = 0; index < plant.CycleSwitchCount; index++)
        {
            double difference = plant.TripVolumeDifferenceM3(index);
            if (difference > plant.CycleVolumeM3(index) * (1.0 + MostError))
                throw new InvalidOperationException($"Plant '{plant.Description.Name}': trip crossings of switch {index + 1} and displaced volume differ by {difference:R} m3, more than one cycle.");
        }
    }
}
