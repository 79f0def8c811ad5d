namespace LubeController.Scripts.Replaying;

/// <summary>Hears how far a replay is. It exists so that a bar may be drawn by whoever owns a terminal.</summary>
public interface IReplayProgress
{
    /// <summary>So many scripts will run.</summary>
    void Begin(int scripts);

    /// <summary>One more script has run; called from any thread.</summary>
    void Advance();

    /// <summary>Something is about to be printed, or all is over: a bar must be out of the way.</summary>
    void Clear();
}

/// <summary>Shows nothing.</summary>
public sealed class NoProgress : IReplayProgress
{
    /// <inheritdoc/>
    public void Begin(int scripts)
    {
    }

    /// <inheritdoc/>
    public void Advance()
    {
    }

    /// <inheritdoc/>
    public void Clear()
    {
    }
}
