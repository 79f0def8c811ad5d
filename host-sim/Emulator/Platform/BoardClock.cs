using System;
using System.Collections.Generic;

namespace LubeController.Emulator.Platform;

/// <summary>
/// The board's oscillator against true time, and the grid of scan ticks that it counts. It runs from the start of the run,
/// whether the board has power or not, so that ticks do not depend on when power came. Both ways are exact: a tick is at
/// the first whole microsecond at which the board's own clock shows it.
/// </summary>
/// <param name="periodUs">Time between two ticks by the board's own clock, us.</param>
internal sealed class BoardClock(long periodUs)
{
    private const long Billion = 1_000_000_000;

    private readonly List<Piece> _pieces = [new(0, 0, Billion)];

    /// <summary>Present rate, billionths of true time.</summary>
    public long RatePpb => _pieces[^1].RatePpb;

    /// <summary>Runs at another rate from now on.</summary>
    /// <param name="nowUs">The present, us.</param>
    /// <param name="ppm">Error, millionths; above zero runs fast.</param>
    public void SetError(long nowUs, double ppm)
    {
        long rate = Billion + (long)Math.Round(ppm * 1000.0);
        if (rate != RatePpb)
            _pieces.Add(new Piece(nowUs, BoardUs(nowUs), rate));
    }

    /// <summary>What the board's clock shows at a time, us since the start of the run.</summary>
    public long BoardUs(long timeUs)
    {
        int index = _pieces.Count - 1;
        while (index > 0 && _pieces[index].TrueUs > timeUs)
            index--;
        Piece piece = _pieces[index];
        long since = timeUs - piece.TrueUs;
        return piece.BoardUs + (piece.RatePpb == Billion ? since : (long)((Int128)since * piece.RatePpb / Billion));
    }

    /// <summary>The first whole microsecond at which the board's clock shows at least so much; <see cref="long.MaxValue"/> for never.</summary>
    public long TrueUs(long boardUs)
    {
        if (boardUs == long.MaxValue)
            return boardUs;
        int index = _pieces.Count - 1;
        while (index > 0 && _pieces[index].BoardUs >= boardUs)
            index--;
        Piece piece = _pieces[index];
        long since = boardUs - piece.BoardUs;
        return piece.TrueUs + (piece.RatePpb == Billion ? since : (long)((((Int128)since * Billion) + piece.RatePpb - 1) / piece.RatePpb));
    }

    /// <summary>When a tick is, us.</summary>
    public long TimeOf(long tick) => tick >= long.MaxValue / 2 / periodUs ? long.MaxValue : TrueUs(tick * periodUs);

    /// <summary>The first tick at or after a time, us.</summary>
    public long TickAtOrAfter(long timeUs)
    {
        long tick = BoardUs(timeUs) / periodUs;
        return TimeOf(tick) < timeUs ? tick + 1 : tick;
    }

    /// <summary>The first tick at which the board's clock shows at least so much.</summary>
    public long TickShowing(long boardUs) => (boardUs / periodUs) + (boardUs % periodUs > 0 ? 1 : 0);

    /// <summary>By how much a time is past a tick by the board's clock, whole milliseconds.</summary>
    public int LateMs(long tick, long timeUs) => (int)((BoardUs(timeUs) - (tick * periodUs)) / 1000);

    /// <summary>A stretch at one rate.</summary>
    private readonly record struct Piece(long TrueUs, long BoardUs, long RatePpb);
}
