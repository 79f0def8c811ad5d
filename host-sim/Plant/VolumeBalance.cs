using System;

namespace LubeController.Plant;

/// <summary>
/// Lubricant volumes since the start, m3 at atmosphere, each counted for itself. Line: change of stored = pumped -
/// delivered - relieved - leaked - bled. Reservoir: change of content = relieved + refilled - pumped - removed. Entrained
/// air is not lubricant and is in no term; a pump that runs dry draws none in.
/// </summary>
/// <param name="PumpedM3">From the reservoir into the line.</param>
/// <param name="DeliveredM3">Out of all outlets.</param>
/// <param name="RelievedM3">Through the relief valve, back to the reservoir.</param>
/// <param name="LeakedM3">Out of a leaking line.</param>
/// <param name="BledM3">Out of the line with air that was bled.</param>
/// <param name="RemovedM3">Taken out of the reservoir by a fault.</param>
/// <param name="RefilledM3">Filled into the reservoir.</param>
/// <param name="LineStoredM3">Held in the line now, beyond what it holds at atmosphere.</param>
/// <param name="LineStoredAtStartM3">The same at the start.</param>
/// <param name="ContentM3">Reservoir content now.</param>
/// <param name="ContentAtStartM3">Reservoir content at the start.</param>
public readonly record struct VolumeBalance(
    double PumpedM3,
    double DeliveredM3,
    double RelievedM3,
    double LeakedM3,
    double BledM3,
    double RemovedM3,
    double RefilledM3,
    double LineStoredM3,
    double LineStoredAtStartM3,
    double ContentM3,
    double ContentAtStartM3)
{
    /// <summary>What the line's balance is off by, m3.</summary>
    public double LineErrorM3 =>
        LineStoredM3 - LineStoredAtStartM3 - (PumpedM3 - DeliveredM3 - RelievedM3 - LeakedM3 - BledM3);

    /// <summary>What the reservoir's balance is off by, m3.</summary>
    public double ReservoirErrorM3 =>
        ContentM3 - ContentAtStartM3 - (RelievedM3 + RefilledM3 - PumpedM3 - RemovedM3);

    /// <summary>
    /// The greater of both errors, each relative to the larger of what was pumped and what was stored there at the start;
    /// 0 if both are 0.
    /// </summary>
    public double RelativeError => Math.Max(
        Relative(LineErrorM3, LineStoredAtStartM3),
        Relative(ReservoirErrorM3, ContentAtStartM3));

    private double Relative(double error, double storedAtStart)
    {
        double whole = Math.Max(PumpedM3, storedAtStart);
        return error == 0 ? 0 : Math.Abs(error) / whole;
    }
}
