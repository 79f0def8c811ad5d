using System;

namespace LubeController.Plant.Outlets;

/// <summary>An outlet among what feeds it.</summary>
/// <param name="Line">Its line and point.</param>
/// <param name="IsPushedInto">Whether a piston stands that would push into it if it were sound.</param>
internal sealed record OutletInPlace(OutletLine Line, Func<bool> IsPushedInto)
{
    /// <summary>Whether lubricant leaves through it now.</summary>
    internal bool Flows => Line.StepLiquidM3 > 0;
}
