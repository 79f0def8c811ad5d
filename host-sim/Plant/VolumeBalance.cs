using System;

namespace LubeController.Plant;

/// <summary>
/// Volumes since the start, m3 at atmosphere, each counted for itself. Line: change of stored = pumped + ingested air -
/// delivered - relieved - returned - leaked - bled - air out, where stored is what the nodes hold at their pressures. Air:
/// change = ingested + placed - out. Reservoir: change of content = relieved + returned + refilled - pumped - removed.
/// </summary>
/// <param name="PumpedM3">Lubricant from the reservoir into the line.</param>
/// <param name="IngestedAirM3">Air that the pump drew and brought into the line.</param>
/// <param name="DeliveredM3">Lubricant at all points.</param>
/// <param name="RelievedM3">Through the relief valve, back to the reservoir.</param>
/// <param name="ReturnedM3">Through vent valve and check valve, back to the reservoir.</param>
/// <param name="LeakedM3">Out of a leaking line or outlet line.</param>
/// <param name="BledM3">Stored volume that went with air that was bled.</param>
/// <param name="AirOutM3">Air that left with lubricant anywhere.</param>
/// <param name="AirPlacedM3">Air put into the line by a fault, less what was bled.</param>
/// <param name="RemovedM3">Taken out of the reservoir by a fault.</param>
/// <param name="RefilledM3">Filled into the reservoir.</param>
/// <param name="LineStoredM3">Held in the line now, beyond what it holds at atmosphere.</param>
/// <param name="LineStoredAtStartM3">The same at the start.</param>
/// <param name="LineAirM3">Air in the line now.</param>
/// <param name="LineAirAtStartM3">Air in the line at the start.</param>
/// <param name="ContentM3">Reservoir content now.</param>
/// <param name="ContentAtStartM3">Reservoir content at the start.</param>
public readonly record struct VolumeBalance(
    double PumpedM3,
    double IngestedAirM3,
    double DeliveredM3,
    double RelievedM3,
    double ReturnedM3,
    double LeakedM3,
    double BledM3,
    double AirOutM3,
    double AirPlacedM3,
    double RemovedM3,
    double RefilledM3,
    double LineStoredM3,
    double LineStoredAtStartM3,
    double LineAirM3,
    double LineAirAtStartM3,
    double ContentM3,
    double ContentAtStartM3)
{
    /// <summary>What the line's balance is off by, m3.</summary>
    public double LineErrorM3 => LineStoredM3 - LineStoredAtStartM3
        - (PumpedM3 + IngestedAirM3 - DeliveredM3 - RelievedM3 - ReturnedM3 - LeakedM3 - BledM3 - AirOutM3);

    /// <summary>What the balance of air in the line is off by, m3.</summary>
    public double AirErrorM3 => LineAirM3 - LineAirAtStartM3 - (IngestedAirM3 + AirPlacedM3 - AirOutM3);

    /// <summary>What the reservoir's balance is off by, m3.</summary>
    public double ReservoirErrorM3 =>
        ContentM3 - ContentAtStartM3 - (RelievedM3 + ReturnedM3 + RefilledM3 - PumpedM3 - RemovedM3);

    /// <summary>
    /// The greatest of the errors, each relative to the larger of what was pumped and what was stored there at the start;
    /// 0 if all are 0.
    /// </summary>
    public double RelativeError => Math.Max(
        Math.Max(Relative(LineErrorM3, LineStoredAtStartM3), Relative(ReservoirErrorM3, ContentAtStartM3)),
        Relative(AirErrorM3, LineAirAtStartM3));

    private double Relative(double error, double storedAtStart)
    {
        double whole = Math.Max(PumpedM3 + IngestedAirM3, storedAtStart);
        return error == 0 ? 0 : Math.Abs(error) / whole;
    }
}
