using System;

namespace LubeController.Analysis.Specification;

/// <summary>Pulses that each of the four switches there may be gave as a witness against one.</summary>
internal record struct WitnessCounts
{
    private int _first;
    private int _second;
    private int _third;
    private int _fourth;

    /// <summary>The most that one switch gave.</summary>
    public readonly int Most => Math.Max(Math.Max(_first, _second), Math.Max(_third, _fourth));

    /// <summary>Counts a pulse of a witness.</summary>
    /// <param name="witness">Which switch gave it, 0 to 3.</param>
    internal void Add(int witness)
    {
        switch (witness)
        {
            case 0:
                _first++;
                break;
            case 1:
                _second++;
                break;
            case 2:
                _third++;
                break;
            default:
                _fourth++;
                break;
        }
    }
}
