namespace LubeController.Board;

/// <summary>Who caused what an entry of the logbook reports.</summary>
public enum LogSource
{
    /// <summary>The controller itself.</summary>
    Controller = 0,

    /// <summary>A person at a button.</summary>
    Button = 1,

    /// <summary>A person at the bench, who asks the controller without a button.</summary>
    Bench = 2,
}
