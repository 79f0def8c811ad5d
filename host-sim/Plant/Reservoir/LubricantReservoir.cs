using System;
using LubeController.Plant.Numbers;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Reservoir;

/// <summary>What the pump draws from and the valves return to, with its two level switches.</summary>
internal sealed class LubricantReservoir
{
    // The last drops do not reach the suction: the pump begins to draw air at the latest here, m3.
    private const double LastDropsM3 = 1e-8;

    private readonly double _aeratesBelow;
    private readonly double _entrained;
    private readonly double _contentAtStart;
    private Sum _content;

    internal LubricantReservoir(ReservoirDescription description)
    {
        _aeratesBelow = Math.Max(description.AeratesBelowM3, LastDropsM3);
        _entrained = description.EntrainedAir;
        _contentAtStart = description.ContentM3;
        _content.Set(_contentAtStart);
        Low = new LevelSwitch(description.LowLevelM3, description.LevelHysteresisM3, description.LowContact, ContentM3);
        Empty = new LevelSwitch(description.EmptyLevelM3, description.LevelHysteresisM3, description.EmptyContact, ContentM3);
    }

    internal double ContentM3 => _content.Value;

    /// <summary>What was taken out at once since the start, m3.</summary>
    internal double RemovedM3 { get; private set; }

    /// <summary>What was filled in at once since the start, m3.</summary>
    internal double RefilledM3 { get; private set; }

    /// <summary>What the planned step changes, m3.</summary>
    internal double StepM3 { get; set; }

    internal LevelSwitch Low { get; }

    internal LevelSwitch Empty { get; }

    /// <summary>Air that a blocked or leaking suction adds to what is drawn, 0 to 1.</summary>
    internal double SuctionAir { get; set; }

    /// <summary>
    /// Air in what is drawn a part of the planned step on, 0 to 1: what is entrained, what a leaking suction adds, and all
    /// where the level is too low.
    /// </summary>
    internal double AirShareAfter(double part)
    {
        double content = ContentM3 + (part * StepM3);
        if (ContentM3 <= LevelSwitch.NearM3)
            return 1;
        double uncovered = content >= _aeratesBelow ? 0 : content > 0 ? 1 - (content / _aeratesBelow) : 1;
        return 1 - ((1 - _entrained) * (1 - SuctionAir) * (1 - uncovered));
    }

    internal void Look(ref Crossing crossing)
    {
        double start = ContentM3;
        double end = start + StepM3;
        crossing.Falling(start, end, 0, LevelSwitch.NearM3);
        Low.Look(start, end, ref crossing);
        Empty.Look(start, end, ref crossing);
    }

    internal void Commit(double part)
    {
        _content.Add(part * StepM3);
        Low.Follow(ContentM3);
        Empty.Follow(ContentM3);
    }

    /// <summary>Fills it at once up to a content; less than it holds changes nothing.</summary>
    internal void Fill(double contentM3)
    {
        if (contentM3 > ContentM3)
            RefilledM3 += Jump(contentM3);
    }

    /// <summary>Takes all but a rest out at once, or fills it to its content at the start.</summary>
    internal void Drain(bool drained, double restM3)
    {
        if (!drained)
            Fill(_contentAtStart);
        else if (restM3 < ContentM3)
            RemovedM3 -= Jump(restM3);
    }

    private double Jump(double contentM3)
    {
        double before = ContentM3;
        _content.Set(contentM3);
        Low.Follow(ContentM3);
        Empty.Follow(ContentM3);
        return ContentM3 - before;
    }
}
