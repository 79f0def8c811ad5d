namespace LubeController.Plant;

/// <summary>
/// Told of each event, so that a recorder need keep only the points where lines bend. Stands apart from the plant so that
/// the plant need not know who records.
/// </summary>
public interface IPlantObserver
{
    /// <summary>
    /// An event was applied. <see cref="LubricationSystem.NowUs"/> is its time, and the system's values are those of that
    /// whole microsecond.
    /// </summary>
    /// <param name="system">The system; ask it for values, do not advance or change it.</param>
    /// <param name="timeUs">The time of the event, us, rounded up.</param>
    /// <param name="change">What the event touched.</param>
    void OnEvent(LubricationSystem system, long timeUs, in PlantChange change);
}
