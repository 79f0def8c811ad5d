using System;
using LubeController.Plant.Divider;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Injectors;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;

namespace LubeController.Plant;

/// <summary>The steps of the network: which ways are open, how far a step may go, and what it changes.</summary>
public sealed partial class LubricationSystem
{
    // A step may err in a node's stored volume by this part of the smallest stroke.
    private const double ErrorPart = 4e-4;

    // Flow below which nothing is said to flow, m3/s: a hundred-thousandth of a cm3 in a day.
    private const double StillM3PerS = 1e-16;

    // A straight line may lie this far from the pressure's curve, Pa.
    private const double BendPa = 2.5e3;

    private const double ShortestStepS = 1e-10;

    private const double FirstStepS = 1e-3;

    // Air is carried at most this part of a node further in one step.
    private const double AirPart = 0.25;

    private const int MostTries = 500;

    // A one-way flow's corner within a step may cost this part of the error bound.
    private const double CornerPart = 0.05;

    // What the pump brings is corrected to this part of the error bound, in so many tries.
    private const double CorrectedPart = 5e-4;

    private const int MostCorrections = 4;

    private double _triedS = FirstStepS;
    private double _viscosityRatio = 1;
    private double _drawnPa;
    private double _drawnShare;
    private double _pumpedStep;
    private double _ingestedStep;
    private double _relievedStep;
    private double _returnedStep;
    private double _leakedStep;
    private double _airOutStep;
    private bool _pumpPieceEnds;
    private ulong _changedPistons;
    private UInt128 _changedOutlets;
    private Rates _rates;

    /// <summary>Steps of the network that were planned since the start.</summary>
    public long StepCount { get; private set; }

    /// <summary>Steps of the network that were tried since the start.</summary>
    public long TryCount { get; private set; }

    private void Resolve()
    {
        _viscosityRatio = _lubricant.ApparentViscosityPaS / _lubricant.ReferenceViscosityPaS;
        _network.ClearBranches();
        _layout.AddBranches(_network);
        _relief.Resolve(_network);
        _pump.Resolve(_network.PressurePa(0));
        _drains.Resolve(_network, _viscosityRatio);
        foreach (ProgressiveDivider divider in _dividers)
            divider.Resolve(_network, _viscosityRatio);
        for (int i = 0; i < _injectors.Length; i++)
            _injectors[i].Resolve(_network, i);
        _pressureSwitch?.Follow(_network.PressurePa(NodeAt(_pressureSwitch.Place)));
    }

    private void PlanStep()
    {
        StepCount++;
        Draw(_network.PressurePa(0), _reservoir.AirShareAfter(0));
        _network.Begin();
        double most = Math.Min(_pump.RemainingS, _longestStepS);
        bool still = _network.Still(StillM3PerS);
        if (still && !AnyRecharges && !_transmitter.Follows(_network) && _gauge?.Follows(_network) != true)
        {
            _network.PlanStandstill();
            TakeOver(most);
        }
        else
        {
            most = Math.Min(most, Math.Min(_transmitter.LongestStepS(_network), _gauge?.LongestStepS(_network) ?? most));
            Search(most, still);
        }

        _pumpPieceEnds = _nextS == _pump.RemainingS;
    }

    private bool AnyRecharges
    {
        get
        {
            foreach (Injector injector in _injectors)
            {
                if (injector.Recharges)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Tries steps until one errs little enough and passes nothing that must happen at its end.</summary>
    private void Search(double mostS, bool still)
    {
        double seconds = Math.Min(mostS, AirLimitS(_triedS));
        int corrections = 0;
        for (int i = 0; i < MostTries; i++)
        {
            TryCount++;
            _network.Try(seconds);
            double allowed = Math.Sqrt(_errorBoundM3 / Math.Max(_network.ErrorM3, _errorBoundM3 * 1e-4));
            if (allowed < 1 && seconds > ShortestStepS)
            {
                seconds *= Math.Max(0.1, 0.8 * allowed);
                continue;
            }

            if (_network.WouldLackAir && seconds > ShortestStepS)
            {
                seconds = Math.Max(ShortestStepS, seconds / 2);
                continue;
            }

            _network.FinishTry();
            if (_network.BendPa > _bendBoundPa && seconds > ShortestStepS)
            {
                seconds *= Math.Max(0.1, 0.8 * Math.Sqrt(_bendBoundPa / _network.BendPa));
                continue;
            }

            allowed = Math.Min(allowed, Math.Sqrt(_bendBoundPa / Math.Max(_network.BendPa, _bendBoundPa * 1e-4)));
            Account();
            if (corrections < MostCorrections && DrawsOtherwise(ref seconds))
            {
                corrections++;
                continue;
            }

            double part = Look(seconds);
            if (part >= 1 || seconds <= ShortestStepS)
            {
                Suggest(seconds, mostS, allowed, still);
                break;
            }

            seconds = Math.Max(ShortestStepS, seconds * part);
            corrections = 0;
        }

        TakeOver(seconds);
    }

    private void Draw(double pressurePa, double airShare)
    {
        _drawnPa = pressurePa;
        _drawnShare = airShare;
        _network.Pump = _pump.Draw(pressurePa, _viscosityRatio, airShare);
    }

    /// <summary>
    /// Draws at the middle of the tried step, where a speed that sags and a reservoir that runs low err by second order only.
    /// </summary>
    /// <returns>Whether that differs from what the step was tried with.</returns>
    private bool DrawsOtherwise(ref double seconds)
    {
        Inflow before = _network.Pump;
        double remainingBeforeS = _pump.RemainingS;
        double pressureBeforePa = _drawnPa;
        double shareBefore = _drawnShare;
        Draw(0.5 * (_network.PressurePa(0) + _network.EndPressurePa(0)), _reservoir.AirShareAfter(0.5));
        Inflow now = _network.Pump;
        double change = Math.Abs(now.FlowM3PerS - before.FlowM3PerS) + (now.FlowM3PerS * Math.Abs(now.AirShare - before.AirShare));
        if (change * seconds <= CorrectedPart * _errorBoundM3)
        {
            Draw(pressureBeforePa, shareBefore);
            return false;
        }

        seconds = seconds == remainingBeforeS ? _pump.RemainingS : Math.Min(seconds, _pump.RemainingS);
        return true;
    }

    // The next step is tried as long as this one's error allows; one that an event cut short says nothing against longer ones.
    private void Suggest(double seconds, double mostS, double allowed, bool still)
    {
        double next = seconds * Math.Min(4, 0.8 * allowed);
        _triedS = still || seconds >= mostS ? Math.Max(_triedS, next) : Math.Max(next, FirstStepS * 1e-6);
        if (double.IsInfinity(_triedS) || _triedS > 1e6)
            _triedS = 1e6;
    }

    private double AirLimitS(double seconds)
    {
        double limit = seconds;
        for (int b = 0; b < _network.Branches; b++)
        {
            ref readonly Branch branch = ref _network.Branch(b);
            double flow = Math.Abs(_network.FlowM3PerS(b));
            if (flow > 0 && _network.AirM3(branch.From) > 0)
                limit = Math.Min(limit, AirPart * _network.VolumeM3(branch.From) / flow);
        }

        return Math.Max(limit, ShortestStepS);
    }

    private double Look(double seconds)
    {
        Crossing crossing = Crossing.None;
        _relief.Look(_network, ref crossing);
        _pump.Look(_network.PressurePa(0), _network.EndPressurePa(0), ref crossing);
        _network.FindCorners(seconds, CornerPart * _errorBoundM3, ref crossing);
        foreach (ProgressiveDivider divider in _dividers)
            divider.FindCrossing(_network, ref crossing);
        foreach (Injector injector in _injectors)
            injector.Look(_network, seconds, ref crossing);
        if (_pressureSwitch is { } pressure)
        {
            int node = NodeAt(pressure.Place);
            pressure.Look(_network.PressurePa(node), _network.EndPressurePa(node), ref crossing);
        }

        _reservoir.Look(ref crossing);
        return crossing.Part;
    }

    /// <summary>Takes the tried step as the planned one.</summary>
    private void TakeOver(double seconds)
    {
        _nextS = seconds;
        double perSecond = seconds > 0 && !double.IsInfinity(seconds) ? 1 / seconds : 0;
        bool madeUp = false;
        _changedPistons = 0;
        foreach (ProgressiveDivider divider in _dividers)
        {
            madeUp |= divider.Plan(_network, perSecond);
            _changedPistons |= divider.ChangedPistons << divider.FirstSection;
        }

        for (int i = 0; i < _injectors.Length; i++)
        {
            madeUp |= _injectors[i].Plan(_network, seconds, perSecond);
            if (_injectors[i].Changed)
                _changedPistons |= 1UL << (SectionCount + i);
        }

        if (madeUp)
            _network.FindEndPressures();
        Account();
        _transmitter.Plan(_network, seconds);
        _gauge?.Plan(_network, seconds);
        NoteOutletFlows(perSecond);
    }

    /// <summary>Adds up where the tried step's volumes go.</summary>
    private void Account()
    {
        _ingestedStep = _network.PumpVolumeM3 * _network.Pump.AirShare;
        _pumpedStep = _network.PumpVolumeM3 - _ingestedStep;
        _relievedStep = 0;
        _returnedStep = 0;
        _leakedStep = 0;
        _airOutStep = 0;
        foreach (OutletLine outlet in _outlets)
        {
            outlet.StepLiquidM3 = 0;
            outlet.StepAirM3 = 0;
        }

        for (int b = 0; b < _network.Branches; b++)
        {
            if (_network.Branch(b).To < 0)
                AccountOut(b);
        }

        _reservoir.StepM3 = _relievedStep + _returnedStep - _pumpedStep;
    }

    private void AccountOut(int index)
    {
        ref readonly Branch branch = ref _network.Branch(index);
        double volume = _network.BranchVolumeM3(index);
        double liquid = volume * _network.LiquidShare(branch.From);
        double air = volume * _network.AirShare(branch.From);
        switch (branch.Kind)
        {
            case BranchKind.Relief:
                _relievedStep += liquid;
                _airOutStep += air;
                break;
            case BranchKind.Vent:
            case BranchKind.CheckValve:
                _returnedStep += liquid;
                _airOutStep += air;
                break;
            case BranchKind.Leak:
                _leakedStep += liquid;
                _airOutStep += air;
                break;
            default:
                _outlets[branch.Outlet].StepLiquidM3 += liquid;
                _outlets[branch.Outlet].StepAirM3 += air;
                break;
        }
    }

    private void Commit(double part, double seconds)
    {
        _pump.Advance(seconds, part == 1 && _pumpPieceEnds);
        if (part == 0)
            return;
        _pumped.Add(part * _pumpedStep);
        _ingested.Add(part * _ingestedStep);
        _relieved.Add(part * _relievedStep);
        _returned.Add(part * _returnedStep);
        _leaked.Add(part * _leakedStep);
        _airOut.Add(part * _airOutStep);
        _network.Commit(part);
        _reservoir.Commit(part);
        _transmitter.Commit(part);
        _gauge?.Commit(part);
        foreach (OutletLine outlet in _outlets)
            outlet.Commit(part);
        foreach (ProgressiveDivider divider in _dividers)
            divider.Commit(part);
        foreach (Injector injector in _injectors)
            injector.Commit(part);
    }

    private void Reach()
    {
        foreach (ProgressiveDivider divider in _dividers)
            divider.Reach();
        foreach (Injector injector in _injectors)
            injector.Reach();
    }

    private void NoteOutletFlows(double perSecond)
    {
        _changedOutlets = 0;
        for (int i = 0; i < _outlets.Length; i++)
        {
            OutletLine outlet = _outlets[i];
            outlet.FlowBeforeM3PerS = outlet.FlowM3PerS;
            outlet.FlowM3PerS = outlet.StepLiquidM3 * (1 - outlet.LostShare) * perSecond;
            if (outlet.FlowM3PerS != outlet.FlowBeforeM3PerS)
                _changedOutlets |= UInt128.One << i;
        }
    }

    private PlantQuantities ChangedRates()
    {
        double perSecond = _nextS > 0 && !double.IsInfinity(_nextS) ? 1 / _nextS : 0;
        var rates = new Rates(
            (_network.EndPressurePa(0) - _network.PressurePa(0)) * perSecond,
            (_network.EndPressurePa(_layout.End) - _network.PressurePa(_layout.End)) * perSecond,
            _reservoir.StepM3 * perSecond,
            _pumpedStep * perSecond,
            _relievedStep * perSecond,
            (_leakedStep + LostStep) * perSecond);
        Rates before = _rates;
        _rates = rates;
        return (rates.Pressure != before.Pressure ? PlantQuantities.LinePressure : 0)
            | (rates.EndPressure != before.EndPressure ? PlantQuantities.EndPressure : 0)
            | (rates.Content != before.Content ? PlantQuantities.ReservoirContent : 0)
            | (rates.Pumped != before.Pumped ? PlantQuantities.Pumped : 0)
            | (rates.Relieved != before.Relieved ? PlantQuantities.Relieved : 0)
            | (rates.Leaked != before.Leaked ? PlantQuantities.Leaked : 0);
    }

    private double LostStep
    {
        get
        {
            double lost = 0;
            foreach (OutletLine outlet in _outlets)
                lost += outlet.StepLiquidM3 * outlet.LostShare;
            return lost;
        }
    }

    private readonly record struct Rates(double Pressure, double EndPressure, double Content, double Pumped, double Relieved, double Leaked);
}
