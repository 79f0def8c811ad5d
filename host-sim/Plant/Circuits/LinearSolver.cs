using System;

namespace LubeController.Plant.Circuits;

/// <summary>
/// Solves a small dense system by elimination with partial pivoting: always in the same order, so that the same system
/// gives the same bits. Grows when it must, and allocates only then.
/// </summary>
internal sealed class LinearSolver
{
    private double[] _matrix = [];
    private double[] _right = [];
    private int _size;

    internal void Clear(int size)
    {
        _size = size;
        if (_right.Length < size)
        {
            _matrix = new double[size * size];
            _right = new double[size];
        }

        Array.Clear(_matrix, 0, size * size);
        Array.Clear(_right, 0, size);
    }

    internal void Add(int row, int column, double value)
    {
        if (row >= 0 && column >= 0)
            _matrix[(row * _size) + column] += value;
    }

    internal void AddRight(int row, double value)
    {
        if (row >= 0)
            _right[row] += value;
    }

    /// <summary>Puts the answer into an array.</summary>
    /// <returns>-1, or the number of an unknown that the equations leave open.</returns>
    internal int Solve(double[] answer)
    {
        for (int column = 0; column < _size; column++)
        {
            int pivot = PivotOf(column);
            if (_matrix[(pivot * _size) + column] == 0)
                return column;
            if (pivot != column)
                SwapRows(pivot, column);
            Eliminate(column);
        }

        for (int row = _size - 1; row >= 0; row--)
        {
            double rest = _right[row];
            for (int column = row + 1; column < _size; column++)
                rest -= _matrix[(row * _size) + column] * answer[column];
            answer[row] = rest / _matrix[(row * _size) + row];
        }

        return -1;
    }

    private int PivotOf(int column)
    {
        int best = column;
        double most = 0;
        for (int row = column; row < _size; row++)
        {
            double size = Math.Abs(_matrix[(row * _size) + column]);
            if (size > most)
            {
                most = size;
                best = row;
            }
        }

        return best;
    }

    private void SwapRows(int a, int b)
    {
        for (int column = 0; column < _size; column++)
            (_matrix[(a * _size) + column], _matrix[(b * _size) + column]) = (_matrix[(b * _size) + column], _matrix[(a * _size) + column]);
        (_right[a], _right[b]) = (_right[b], _right[a]);
    }

    private void Eliminate(int column)
    {
        int top = column * _size;
        for (int row = column + 1; row < _size; row++)
        {
            int line = row * _size;
            if (_matrix[line + column] == 0)
                continue;
            double factor = _matrix[line + column] / _matrix[top + column];
            for (int k = column + 1; k < _size; k++)
                _matrix[line + k] -= factor * _matrix[top + k];
            _right[row] -= factor * _right[column];
        }
    }
}
